using System.Globalization;
using System.Text.RegularExpressions;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Contracts;

/// <summary>What body and query share: finding fields, reading texts, and wording of refusals.</summary>
internal static partial class JsonFields
{
    private const NumberStyles Number = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    public static FieldDescriptor? Find(MessageDescriptor message, string name)
    {
        var field = message.FindFieldByName(name);
        return field ?? message.Fields.InDeclarationOrder().FirstOrDefault(candidate => candidate.JsonName == name);
    }

    public static string Join(string path, string name) => path.Length == 0 ? name : $"{path}.{name}";

    /// <summary>A name from outside, fit to be sent back: a short word, or a placeholder.</summary>
    public static string Printable(string name) => Word().IsMatch(name) ? name : "(unprintable)";

    /// <summary>Whether a message is written as text in JSON.</summary>
    public static bool IsText(MessageDescriptor message) => message.FullName == Duration.Descriptor.FullName || IsMoment(message);

    /// <summary>Notes a conflict when another member of the field's oneof is set already.</summary>
    public static bool IsFree(IMessage message, FieldDescriptor field, string path, Violations violations)
    {
        if (field.RealContainingOneof?.Accessor.GetCaseFieldDescriptor(message) is not { } other || other == field)
        {
            return true;
        }

        violations.Add(path, RefusalReason.Conflict, $"Cannot stand beside {other.Name}: give one of the two.");
        return false;
    }

    /// <summary>Reads the text of a value; null when it does not fit the field.</summary>
    public static object? Parse(FieldDescriptor field, string text) => field.FieldType switch
    {
        FieldType.Double => double.TryParse(text, Number, CultureInfo.InvariantCulture, out var number)
            && !text.Contains("inf", StringComparison.OrdinalIgnoreCase) && !text.Contains("nan", StringComparison.OrdinalIgnoreCase)
                ? number
                : null,
        FieldType.UInt32 => uint.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null,
        FieldType.Int32 or FieldType.SInt32 =>
            int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null,
        FieldType.Enum => field.EnumType.FindValueByName(text)?.Number
            ?? (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null),
        FieldType.Bool => text switch { "true" => true, "false" => false, _ => null },
        FieldType.String => text,
        FieldType.Message when IsMoment(field.MessageType) => Parse<Timestamp>(text, MomentText()),
        FieldType.Message => Parse<Duration>(text, SecondsText()),
        _ => null,
    };

    public static void Refuse(FieldDescriptor field, string? text, string path, Violations violations)
    {
        var (reason, description) = field.FieldType switch
        {
            FieldType.Double when text is not null && CommaNumber().IsMatch(text) =>
                (RefusalReason.DecimalComma, "Write the number with a point, not a comma."),
            FieldType.Double when text is "NaN" or "Infinity" or "-Infinity" => (RefusalReason.OutOfRange, "Must be a finite number."),
            FieldType.Double => (RefusalReason.WrongType, "Must be a number, without quotes in JSON."),
            FieldType.UInt32 => (RefusalReason.WrongType, "Must be a whole number from 0."),
            FieldType.Int32 or FieldType.SInt32 => (RefusalReason.WrongType, "Must be a whole number."),
            FieldType.Enum => (RefusalReason.UnknownValue,
                "Must be one of " + string.Join(", ", field.EnumType.Values.Where(value => value.Number != 0).Select(value => value.Name)) + "."),
            FieldType.Bool => (RefusalReason.WrongType, "Must be true or false."),
            FieldType.String => (RefusalReason.WrongType, "Must be a text."),
            FieldType.Message when IsMoment(field.MessageType) =>
                (RefusalReason.WrongType, "Must be a moment such as \"2026-06-21T14:05:30Z\" or \"2026-06-21T16:05:30+02:00\"."),
            _ => (RefusalReason.WrongType, "Must be a time in seconds with at most nine decimals, such as \"90s\" or \"1.5s\"."),
        };
        violations.Add(path, reason, description);
    }

    private static bool IsMoment(MessageDescriptor message) => message.FullName == Timestamp.Descriptor.FullName;

    private static T? Parse<T>(string text, Regex form)
        where T : class, IMessage, new()
    {
        try
        {
            return form.IsMatch(text) ? JsonParser.Default.Parse<T>($"\"{text}\"") : null;
        }
        catch (InvalidProtocolBufferException)
        {
            return null;
        }
    }

    [GeneratedRegex(@"^[A-Za-z0-9_\[\]]{1,64}\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Word();

    [GeneratedRegex(@"^-?[0-9]+,[0-9]+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CommaNumber();

    [GeneratedRegex(@"^-?[0-9]{1,12}(\.[0-9]{1,9})?s\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SecondsText();

    [GeneratedRegex(@"^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]{1,9})?(Z|[+-][0-9]{2}:[0-9]{2})\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex MomentText();
}

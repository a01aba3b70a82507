using System.Collections;
using System.Globalization;
using Buf.Validate;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Contracts;

/// <summary>The rules that the contract's annotations set for one field.</summary>
/// <remarks>A rule of any other kind, and a number's bound on one side only, which would let infinity in, throws: the
/// checks must know all of the contract or the service does not start.</remarks>
public sealed record FieldRules
{
    /// <summary>Whether the field must be set.</summary>
    public bool Required { get; private set; }

    /// <summary>Least value of a number; of a Duration, in seconds.</summary>
    public double? Min { get; private set; }

    /// <summary>Whether the least value itself is refused.</summary>
    public bool MinOpen { get; private set; }

    /// <summary>Greatest value of a number; of a Duration, in seconds.</summary>
    public double? Max { get; private set; }

    /// <summary>Whether the greatest value itself is refused.</summary>
    public bool MaxOpen { get; private set; }

    /// <summary>Whether only the values of the contract's enum are let in.</summary>
    public bool DefinedOnly { get; private set; }

    /// <summary>Whether an enum's 0 is refused.</summary>
    public bool NotZero { get; private set; }

    /// <summary>Least count of characters of a text, or of items of a list.</summary>
    public int MinCount { get; private set; }

    /// <summary>Greatest count of characters of a text, or of items of a list.</summary>
    public int? MaxCount { get; private set; }

    /// <summary>Rules of a list's items.</summary>
    public FieldRules? Items { get; private set; }

    /// <summary>The rules of <paramref name="field"/>.</summary>
    /// <exception cref="NotSupportedException">The contract sets a rule that the checks do not know.</exception>
    public static FieldRules Of(FieldDescriptor field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var rules = new FieldRules();
        if (Annotations.Of(field) is { } annotation)
        {
            rules.Read(annotation, field.FullName);
        }

        var number = field.FieldType is FieldType.Double || field is { FieldType: FieldType.Message, MessageType.FullName: "google.protobuf.Duration" };
        return number && rules.Min is null != rules.Max is null
            ? throw new NotSupportedException($"{field.FullName}: a bound on one side lets infinity in.")
            : rules;
    }

    /// <summary>Whether one member of <paramref name="oneof"/> must be set.</summary>
    public static bool IsRequired(OneofDescriptor oneof)
    {
        ArgumentNullException.ThrowIfNull(oneof);
        return Annotations.Of(oneof) is { Required: true };
    }

    /// <summary>Throws when a message as a whole has a rule; such rules are not known.</summary>
    public static void RefuseMessageRules(MessageDescriptor message)
    {
        ArgumentNullException.ThrowIfNull(message);
        if (Annotations.Of(message) is not null)
        {
            throw Unknown(message.FullName);
        }
    }

    private void Read(IMessage annotation, string name)
    {
        foreach (var rule in annotation.Descriptor.Fields.InFieldNumberOrder().Where(rule => IsSet(annotation, rule)))
        {
            Read(annotation, rule.Name, rule.Accessor.GetValue(annotation), name);
        }
    }

    private void Read(IMessage annotation, string rule, object value, string name)
    {
        switch (rule)
        {
            case "double" or "duration" or "int32" or "sint32" or "uint32" or "enum" or "string" or "repeated":
                Read((IMessage)value, name);
                break;
            case "required":
                Required = (bool)value;
                break;
            case "gte" or "gt":
                (Min, MinOpen) = (Number(value), rule == "gt");
                break;
            case "lte" or "lt":
                (Max, MaxOpen) = (Number(value), rule == "lt");
                break;
            case "defined_only":
                DefinedOnly = (bool)value;
                break;
            case "not_in" when annotation is EnumRules { NotIn: [0] }:
                NotZero = true;
                break;
            case "min_len" or "min_items":
                MinCount = (int)Number(value);
                break;
            case "max_len" or "max_items":
                MaxCount = (int)Number(value);
                break;
            case "items":
                Items = new();
                Items.Read((IMessage)value, name);
                break;
            default:
                throw Unknown($"{name} ({rule})");
        }
    }

    private static bool IsSet(IMessage annotation, FieldDescriptor rule) => rule switch
    {
        { IsRepeated: true } => ((IList)rule.Accessor.GetValue(annotation)).Count > 0,
        { HasPresence: true } => rule.Accessor.HasValue(annotation),
        _ => throw new InvalidOperationException($"The rule {rule.FullName} has no presence."),
    };

    private static double Number(object value) =>
        value is Duration time ? time.Seconds + time.Nanos / 1e9 : Convert.ToDouble(value, CultureInfo.InvariantCulture);

    private static NotSupportedException Unknown(string name) => new($"{name}: a rule that the checks do not know.");
}

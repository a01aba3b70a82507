using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>Values of an answer as the text of one cell.</summary>
internal sealed class CellText(UnitSystem system)
{
    /// <summary>The fields of a message that say something, with their values.</summary>
    public static IEnumerable<(FieldDescriptor Field, object Value)> Fields(IMessage message) =>
        from field in message.Descriptor.Fields.InFieldNumberOrder()
        where !field.HasPresence || field.Accessor.HasValue(message)
        let value = field.Accessor.GetValue(message)
        where value is not null && !(field is { FieldType: FieldType.Enum, IsRepeated: false } && (int)value == 0)
        select (field, value);

    public string Scalar(FieldDescriptor field, object value) => value switch
    {
        double number => Units.Show(field, number, system),
        bool answer => answer ? "yes" : "no",
        Enum or int when field.FieldType == FieldType.Enum => Words.Value(field.EnumType, (int)value),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    /// <summary>A whole item, such as a remedy, in one line: what to do, by how much, and the settings that come of it.</summary>
    public string OneLine(IMessage item)
    {
        var facts = new List<string>();
        var settings = new List<string>();
        foreach (var (field, value) in Fields(item))
        {
            switch (value)
            {
                case IMessage inner when ShortForms.Of(inner) is null:
                    settings.AddRange(Fields(inner).Select(Setting).OfType<string>());
                    break;
                case IMessage inner:
                    facts.Add($"{Words.Label(field)} {ShortForms.Of(inner)}");
                    break;
                default:
                    facts.Add(SpeaksForItself(field) ? Scalar(field, value) : $"{Words.Label(field)} {Scalar(field, value)}");
                    break;
            }
        }

        return string.Join(", ", facts) + (settings.Count == 0 ? "" : ": " + string.Join(", ", settings));
    }

    private static bool SpeaksForItself(FieldDescriptor field) => field.FieldNumber == 1 || field.Name == "change_stops";

    // A setting is named after its type: aperture, shutter speed, ISO, and a power.
    private static string? Setting((FieldDescriptor Field, object Value) shown)
    {
        var (field, value) = shown;
        if (value is not IMessage message || ShortForms.Of(message) is not { } text)
        {
            return null;
        }

        var type = Words.Kebab(message.Descriptor.Name);
        var name = field.Name.Replace('_', '-') + "-answer";
        return type == name ? text : type.EndsWith("-" + name, StringComparison.Ordinal) ? $"{Words.Label(field)} {text}" : null;
    }
}

using System.Globalization;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Cli;

/// <summary>The text of one value of a field, both ways, and what such a text looks like.</summary>
internal static class ValueText
{
    /// <summary>Reads a value, as the field's accessor takes it.</summary>
    /// <exception cref="FormatException">The text is no such value; the message says what to write.</exception>
    public static object Read(FieldDescriptor field, string text) => field.FieldType switch
    {
        FieldType.Double when UnitSuffix.Of(field) is { } suffix => QuantityText.Read(text, suffix.Kind, suffix.Unit),
        FieldType.Double => NumberText.Read(text),
        FieldType.UInt32 => uint.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new FormatException($"\"{text}\" is not a whole number from 0; write one such as 3."),
        FieldType.Int32 or FieldType.SInt32 => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new FormatException($"\"{text}\" is not a whole number; write one such as 3 or -3."),
        FieldType.Enum => EnumText.Read(field.EnumType, text),
        FieldType.Bool => text switch
        {
            "true" => true,
            "false" => false,
            _ => throw new FormatException($"\"{text}\" is neither true nor false; write one of them, or the option alone for true."),
        },
        FieldType.String => text,
        FieldType.Message when field.MessageType.FullName == Duration.Descriptor.FullName => TimeShape.Read(text),
        FieldType.Message => DateShape.Read(text),
        _ => throw new NotSupportedException($"{field.FullName}: the command line knows no text for it."),
    };

    /// <summary>The text that reads as the value.</summary>
    public static string Write(FieldDescriptor field, object value) => value switch
    {
        double number => UnitSuffix.Of(field) is { } suffix ? QuantityText.Write(number, suffix.Unit) : NumberText.Write(number),
        bool yes => yes ? "true" : "false",
        Duration time => TimeShape.Write(time),
        Timestamp time => DateShape.Write(time),
        _ when field.FieldType == FieldType.Enum =>
            EnumText.Write(field.EnumType.FindValueByNumber((int)value) ?? throw new FormatException($"{field.FullName} has no value {value}.")),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };

    /// <summary>What to write, for help: <c>&lt;length&gt;</c>, <c>whole|half|third|tenth</c>.</summary>
    public static string Form(FieldDescriptor field) => field.FieldType switch
    {
        FieldType.Double => UnitSuffix.Of(field) is { } suffix ? $"<{suffix.Kind.Name}>" : "<number>",
        FieldType.UInt32 or FieldType.Int32 or FieldType.SInt32 => "<whole number>",
        FieldType.Enum => string.Join('|', EnumText.Choices(field.EnumType)),
        FieldType.Bool => "[true|false]",
        FieldType.Message => field.MessageType.FullName == Duration.Descriptor.FullName ? "<time>" : "<moment>",
        _ => "<text>",
    };
}

using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using Microsoft.OpenApi;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>Single values of the contract as JSON schemas.</summary>
internal static class OpenApiValues
{
    /// <summary>Whether a message is written as text in JSON.</summary>
    public static bool IsText(MessageDescriptor message) => message.FullName == Duration.Descriptor.FullName || message.FullName == Timestamp.Descriptor.FullName;

    public static OpenApiSchema Of(FieldDescriptor field, FieldRules rules) => field.FieldType switch
    {
        FieldType.Double => Number(JsonSchemaType.Number, "double", rules, null, null),
        FieldType.UInt32 => Number(JsonSchemaType.Integer, null, rules, uint.MinValue, uint.MaxValue),
        FieldType.Int32 or FieldType.SInt32 => Number(JsonSchemaType.Integer, "int32", rules, int.MinValue, int.MaxValue),
        FieldType.Bool => new() { Type = JsonSchemaType.Boolean },
        FieldType.String => new()
        {
            Type = JsonSchemaType.String,
            MinLength = rules.MinCount > 0 ? rules.MinCount : null,
            MaxLength = rules.MaxCount,
        },
        FieldType.Bytes => new() { Type = JsonSchemaType.String, ContentEncoding = "base64" },
        // JSON has no whole numbers of 64 bits; the google.rpc details write theirs as texts.
        FieldType.Int64 => new() { Type = JsonSchemaType.String, Pattern = "^-?[0-9]+$" },
        FieldType.Enum => new() { Type = JsonSchemaType.String, Enum = [.. Of(field.EnumType, rules).Select(value => value.Name)] },
        FieldType.Message when field.MessageType.FullName == Duration.Descriptor.FullName => new()
        {
            Type = JsonSchemaType.String,
            Pattern = $"^{(rules.Min >= 0 ? "" : "-?")}[0-9]{{1,12}}(\\.[0-9]{{1,9}})?s$",
        },
        FieldType.Message when IsText(field.MessageType) => new() { Type = JsonSchemaType.String, Format = "date-time" },
        _ => throw new NotSupportedException($"{field.FullName}: a type that the documentation does not know."),
    };

    /// <summary>The values that may stand in a field: all, or all but 0.</summary>
    public static IEnumerable<EnumValueDescriptor> Of(EnumDescriptor type, FieldRules rules) => type.Values.Where(value => !rules.NotZero || value.Number != 0);

    private static OpenApiSchema Number(JsonSchemaType type, string? format, FieldRules rules, double? least, double? most)
    {
        var (min, max) = (Text(rules.Min ?? least), Text(rules.Max ?? most));
        return new()
        {
            Type = type,
            Format = format,
            Minimum = rules.MinOpen ? null : min,
            ExclusiveMinimum = rules.MinOpen ? min : null,
            Maximum = rules.MaxOpen ? null : max,
            ExclusiveMaximum = rules.MaxOpen ? max : null,
        };
    }

    private static string? Text(double? bound) => bound is { } value ? FieldFacts.Number(value) : null;
}

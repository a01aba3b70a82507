using Google.Protobuf.Reflection;
using Microsoft.OpenApi;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>Messages of the contract as JSON schemas: names, ranges, presence and choices as its annotations say.</summary>
internal sealed class OpenApiSchemas(OpenApiDocument document)
{
    private const string Package = "studiocalc.v1.";

    /// <summary>Adds a message and all that it holds to the document's components.</summary>
    public void Add(MessageDescriptor message)
    {
        var name = NameOf(message);
        document.Components!.Schemas ??= new Dictionary<string, IOpenApiSchema>(StringComparer.Ordinal);
        if (!document.Components.Schemas.ContainsKey(name))
        {
            var schema = new OpenApiSchema();
            document.Components.Schemas.Add(name, schema);
            Fill(schema, message);
            document.RegisterComponents();
        }
    }

    /// <summary>A reference to a message of the components.</summary>
    public IOpenApiSchema Reference(MessageDescriptor message, string? description = null)
    {
        Add(message);
        return new OpenApiSchemaReference(NameOf(message), document) { Description = description };
    }

    /// <summary>The schema of a field's value.</summary>
    public IOpenApiSchema Of(FieldDescriptor field, string? description)
    {
        var rules = FieldRules.Of(field);
        if (field.IsMap)
        {
            return new OpenApiSchema
            {
                Type = JsonSchemaType.Object,
                AdditionalProperties = OpenApiValues.Of(field.MessageType.FindFieldByNumber(2), new()),
                Description = description,
            };
        }

        return field.IsRepeated
            ? new OpenApiSchema
            {
                Type = JsonSchemaType.Array,
                Items = Single(field, rules.Items ?? new(), null),
                MinItems = rules.MinCount > 0 ? rules.MinCount : null,
                MaxItems = rules.MaxCount,
                Description = description,
            }
            : Single(field, rules, description);
    }

    /// <summary>The comment of a field with its unit and, of an enum, what each value means; null when it has none.</summary>
    public static string? Describe(FieldDescriptor field)
    {
        var unit = FieldFacts.UnitOf(field);
        var text = ContractComments.Of(field) + (unit.Length > 0 ? $" Unit: {unit}." : "");
        if (field.FieldType == FieldType.Enum)
        {
            text += string.Concat(OpenApiValues.Of(field.EnumType, RulesOfValue(field)).Select(value => $"\n- `{value.Name}`: {ContractComments.Of(value)}"));
        }

        return text.Trim() is { Length: > 0 } told ? told : null;
    }

    private static FieldRules RulesOfValue(FieldDescriptor field) => field.IsRepeated ? FieldRules.Of(field).Items ?? new() : FieldRules.Of(field);

    private static string NameOf(MessageDescriptor message) =>
        message.FullName.StartsWith(Package, StringComparison.Ordinal) ? message.FullName[Package.Length..] : message.FullName;

    private IOpenApiSchema Single(FieldDescriptor field, FieldRules rules, string? description)
    {
        if (field.FieldType == FieldType.Message && !OpenApiValues.IsText(field.MessageType))
        {
            return Reference(field.MessageType, description);
        }

        var schema = OpenApiValues.Of(field, rules);
        schema.Description = description;
        return schema;
    }

    private void Fill(OpenApiSchema schema, MessageDescriptor message)
    {
        var fields = message.Fields.InDeclarationOrder();
        var sent = FieldFacts.IsSent(message) && message.FullName.StartsWith(Package, StringComparison.Ordinal);
        schema.Type = JsonSchemaType.Object;
        schema.Properties = fields.ToDictionary(field => field.JsonName, field => Of(field, Describe(field)), StringComparer.Ordinal);
        schema.AdditionalPropertiesAllowed = !sent;
        schema.Required = fields.Where(field => sent ? FieldFacts.IsRequired(field) : !field.HasPresence)
            .Select(field => field.JsonName).ToHashSet(StringComparer.Ordinal);
        var oneofs = FieldFacts.OneofsOf(message).ToList();
        schema.AllOf = [.. oneofs.Select(Choice)];
        schema.Description = string.Join(' ', [ContractComments.Of(message), .. oneofs.Select(InWords)]).Trim() is { Length: > 0 } told ? told : null;
    }

    private static OpenApiSchema Choice(OneofDescriptor oneof)
    {
        var names = oneof.Fields.Select(field => field.JsonName).ToList();
        if (FieldRules.IsRequired(oneof))
        {
            return new OpenApiSchema { OneOf = [.. names.Select(name => Needs(name))] };
        }

        var pairs = names.SelectMany((first, i) => names.Skip(i + 1).Select(second => Needs(first, second)));
        return new OpenApiSchema { Not = new OpenApiSchema { AnyOf = [.. pairs] } };
    }

    private static OpenApiSchema Needs(params string[] names) => new OpenApiSchema { Required = names.ToHashSet(StringComparer.Ordinal) };

    private static string InWords(OneofDescriptor oneof)
    {
        var names = string.Join(", ", oneof.Fields.Select(field => $"`{field.JsonName}`"));
        return $"{(FieldRules.IsRequired(oneof) ? "Exactly" : "At most")} one of {names}.";
    }
}

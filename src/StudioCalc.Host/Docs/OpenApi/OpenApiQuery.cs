using System.Text.Json.Nodes;
using Google.Protobuf.Reflection;
using Microsoft.OpenApi;

namespace StudioCalc.Host;

/// <summary>A request as query parameters with dotted names, such as <c>settings.aperture.mark</c>.</summary>
internal sealed class OpenApiQuery(OpenApiSchemas schemas)
{
    public IList<IOpenApiParameter> Of(MessageDescriptor request, JsonNode? sample)
    {
        var parameters = new List<IOpenApiParameter>();
        Add(parameters, request, "", required: true, sample, []);
        return parameters;
    }

    // Lists and maps have no form in a query, and a message inside itself no end.
    private void Add(
        List<IOpenApiParameter> parameters, MessageDescriptor message, string prefix, bool required, JsonNode? sample, IEnumerable<MessageDescriptor> around)
    {
        foreach (var field in message.Fields.InDeclarationOrder().Where(field => !field.IsRepeated))
        {
            var (name, needed) = (prefix + field.JsonName, required && FieldFacts.IsRequired(field));
            var value = (sample as JsonObject)?[field.JsonName];
            if (field.FieldType != FieldType.Message || OpenApiValues.IsText(field.MessageType))
            {
                parameters.Add(new OpenApiParameter
                {
                    Name = name,
                    In = ParameterLocation.Query,
                    Required = needed,
                    Description = OpenApiSchemas.Describe(field) + Choice(field),
                    Schema = schemas.Of(field, null),
                    Example = value?.DeepClone(),
                });
            }
            else if (field.MessageType != message && !around.Contains(field.MessageType))
            {
                Add(parameters, field.MessageType, name + ".", needed, value, around.Append(message));
            }
        }
    }

    private static string Choice(FieldDescriptor field) => field.RealContainingOneof is null ? "" : $"\n\nGive {FieldFacts.PresenceOf(field)}.";
}

using System.Text.Json.Nodes;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Microsoft.OpenApi;
using StudioCalc.Contracts;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Host;

/// <summary>What a call may reply: its answer, or a refusal for each HTTP status that can occur.</summary>
internal sealed class OpenApiReplies
{
    private const string Json = "application/json";

    private readonly OpenApiDocument _document;
    private readonly OpenApiSchemas _schemas;
    private readonly List<(string Status, bool BodyOnly)> _refusals = [];

    public OpenApiReplies(OpenApiDocument document, OpenApiSchemas schemas, StudioCalcOptions options)
    {
        (_document, _schemas) = (document, schemas);
        document.Components!.Responses = new Dictionary<string, IOpenApiResponse>(StringComparer.Ordinal);
        AddStatus();
        Refuse("400", RefusalReason.InvalidFields, "Fields are refused, each by its path and reason; or the values have no finite answer together (`ANSWER_NOT_FINITE`).", null);
        if (options.Security.ApiKeys.Count > 0)
        {
            Refuse("401", RefusalReason.Unauthenticated, "The call has no valid key.", Refusal.Unauthenticated());
        }

        Refuse("413", RefusalReason.RequestTooLarge, "The request is too large.", Refusal.RequestTooLarge(ContractInterceptor.MaxRequestBytes), bodyOnly: true);
        Refuse("415", RefusalReason.WrongContentType, "The body is not uncompressed JSON in UTF-8.", Refusal.WrongContentType(), bodyOnly: true);
        if (options.Limits.CallsPerSecond > 0)
        {
            Refuse("429", RefusalReason.RateExceeded, "Calls come faster than this host allows.", Refusal.RateExceeded(TimeSpan.FromSeconds(1)));
            ((OpenApiResponse)document.Components.Responses["429"]).Headers = new Dictionary<string, IOpenApiHeader>(StringComparer.Ordinal)
            {
                ["retry-after"] = new OpenApiHeader
                {
                    Description = "Whole seconds to wait.",
                    Schema = new OpenApiSchema { Type = JsonSchemaType.Integer, Minimum = "0" },
                },
            };
        }

        Refuse("504", RefusalReason.DeadlineExceeded, "The time allowed is over, which the header `grpc-timeout` may shorten.", Refusal.DeadlineExceeded());
        document.Components.Responses.Add("default", Reply(
            "Any other failure, in the same form: 405 where the path answers to other methods, 500 for a fault of the service. A proxy before it may reply 503 in a form of its own.",
            null));
        document.RegisterComponents();
    }

    public OpenApiResponses Of(MethodDescriptor method, bool hasBody)
    {
        var replies = new OpenApiResponses
        {
            ["200"] = new OpenApiResponse
            {
                Description = ContractComments.Of(method.OutputType),
                Content = new Dictionary<string, IOpenApiMediaType>(StringComparer.Ordinal)
                {
                    [Json] = new OpenApiMediaType { Schema = _schemas.Reference(method.OutputType) },
                },
            },
        };
        foreach (var (status, _) in _refusals.Where(refusal => hasBody || !refusal.BodyOnly))
        {
            replies[status] = new OpenApiResponseReference(status, _document);
        }

        replies["default"] = new OpenApiResponseReference("default", _document);
        return replies;
    }

    private void Refuse(string status, RefusalReason reason, string description, Google.Rpc.Status? sample, bool bodyOnly = false)
    {
        var name = Refusal.NameOf(reason);
        var page = name.ToLowerInvariant().Replace('_', '-');
        _document.Components!.Responses!.Add(status, Reply($"{description} See [{name}](/docs/refusals/{page}).", sample));
        _refusals.Add((status, bodyOnly));
    }

    private OpenApiResponse Reply(string description, IMessage? sample) => new()
    {
        Description = description,
        Content = new Dictionary<string, IOpenApiMediaType>(StringComparer.Ordinal)
        {
            [Json] = new OpenApiMediaType
            {
                Schema = new OpenApiSchemaReference(Google.Rpc.Status.Descriptor.FullName, _document),
                Example = sample is null ? null : JsonNode.Parse(ContractJson.Write(sample)),
            },
        },
    };

    // Details are of any type; in JSON each names its own.
    private void AddStatus()
    {
        MessageDescriptor[] details = [ErrorInfo.Descriptor, BadRequest.Descriptor, RetryInfo.Descriptor, QuotaFailure.Descriptor];
        foreach (var detail in details)
        {
            _schemas.Add(detail);
            var schema = (OpenApiSchema)_document.Components!.Schemas![detail.FullName];
            schema.Properties!["@type"] = new OpenApiSchema { Const = "type.googleapis.com/" + detail.FullName };
            schema.Required!.Add("@type");
        }

        var reasons = Enum.GetValues<RefusalReason>().Where(reason => reason != RefusalReason.Unspecified).Select(reason => $"`{Refusal.NameOf(reason)}`");
        foreach (var holder in new[] { ErrorInfo.Descriptor, BadRequest.Types.FieldViolation.Descriptor })
        {
            var reason = (OpenApiSchema)((OpenApiSchema)_document.Components!.Schemas![holder.FullName]).Properties!["reason"];
            reason.Description = $"Stable; act on it. One of {string.Join(", ", reasons)}.";
        }

        _document.Components!.Schemas!.Add(Google.Rpc.Status.Descriptor.FullName, new OpenApiSchema
        {
            Type = JsonSchemaType.Object,
            Description = "A refusal. `google.rpc.ErrorInfo` tells the reason, `google.rpc.BadRequest` the fields. Texts may change; act on code and reasons.",
            Required = new HashSet<string>(StringComparer.Ordinal) { "code", "message", "details" },
            Properties = new Dictionary<string, IOpenApiSchema>(StringComparer.Ordinal)
            {
                ["code"] = new OpenApiSchema { Type = JsonSchemaType.Integer, Description = "The gRPC status code." },
                ["message"] = new OpenApiSchema { Type = JsonSchemaType.String, Description = "An English sentence, for display only." },
                ["details"] = new OpenApiSchema
                {
                    Type = JsonSchemaType.Array,
                    Items = new OpenApiSchema { OneOf = [.. details.Select(detail => _schemas.Reference(detail))] },
                },
            },
        });
    }
}

using System.Globalization;
using System.Reflection;
using System.Text.Json.Nodes;
using Google.Protobuf.Reflection;
using Microsoft.OpenApi;
using StudioCalc.Contracts;
using StudioCalc.Maths;
using StudioCalc.Services;
using ServiceDescriptor = Google.Protobuf.Reflection.ServiceDescriptor;

namespace StudioCalc.Host;

/// <summary>The OpenAPI document of the contract, made from its descriptors, annotations, comments and samples.</summary>
internal static class OpenApiText
{
    private const string Scheme = "key";

    private const string About = """
        Numbers for food photographers. Every call is stateless, has no side effects and may be repeated.

        [Contract](/docs/contract) · [Refusals](/docs/refusals) · [Advisories](/docs/advisories) · [Glossary](/docs/glossary)

        The JSON is proto3 JSON read strictly: names that are not in the contract, names given twice, numbers in quotes and decimal commas
        are refused. A null member counts as unset. Names may also be written as in the proto files. Every reply has the header
        `x-request-id`. Stops are positive when there is more light.
        """;

    public static string Write(StudioCalcOptions options)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        Make(options).SerializeAsV31(new OpenApiJsonWriter(text));
        return text.ToString();
    }

    public static OpenApiDocument Make(StudioCalcOptions options)
    {
        var document = new OpenApiDocument
        {
            Info = new()
            {
                Title = "StudioCalc",
                Version = typeof(MethodTable).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion,
                Description = $"{About}\n\nModel revision {ModelRevision.Current}.",
                Extensions = new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal)
                {
                    ["x-model-revision"] = new JsonNodeExtension(JsonValue.Create(ModelRevision.Current)),
                },
            },
            Servers = [new() { Url = "/" }],
            Paths = [],
            Components = new(),
            Tags = Contract.Services.Select(Tag).ToHashSet(),
        };
        AskForKey(document, options.Security);
        var schemas = new OpenApiSchemas(document);
        foreach (var message in Contract.Files.SelectMany(file => file.MessageTypes))
        {
            schemas.Add(message);
        }

        var replies = new OpenApiReplies(document, schemas, options);
        foreach (var path in HttpRoute.All.GroupBy(route => route.Path, StringComparer.Ordinal))
        {
            var item = new OpenApiPathItem();
            foreach (var route in path)
            {
                item.AddOperation(new(route.Verb), Operation(document, schemas, replies, route));
            }

            document.Paths.Add(path.Key, item);
        }

        return document;
    }

    private static OpenApiOperation Operation(OpenApiDocument document, OpenApiSchemas schemas, OpenApiReplies replies, HttpRoute route)
    {
        var (method, hasBody) = (route.Method, HttpMethods.IsPost(route.Verb));
        var sample = EmbeddedDocs.Sample(method) is { } text ? JsonNode.Parse(text) : null;
        var comment = ContractComments.Of(method).Split(". ", 2);
        var second = !hasBody && HttpRoute.Of(method).Count() > 1;
        return new()
        {
            OperationId = method.Name + (second ? "ByQuery" : ""),
            Summary = comment[0].TrimEnd('.'),
            Description = $"{comment.ElementAtOrDefault(1)}\n\n[In the contract](/docs/contract#call-{method.Name})".Trim(),
            Tags = new HashSet<OpenApiTagReference> { new(TagName(method.Service), document) },
            RequestBody = hasBody ? Body(schemas, method, sample) : null,
            Parameters = hasBody ? null : new OpenApiQuery(schemas).Of(method.InputType, sample),
            Responses = replies.Of(method, hasBody),
        };
    }

    private static OpenApiRequestBody Body(OpenApiSchemas schemas, MethodDescriptor method, JsonNode? sample) => new()
    {
        Required = true,
        Content = new Dictionary<string, IOpenApiMediaType>(StringComparer.Ordinal)
        {
            ["application/json"] = new OpenApiMediaType { Schema = schemas.Reference(method.InputType), Example = sample },
        },
    };

    private static OpenApiTag Tag(ServiceDescriptor service)
    {
        var page = $"docs/models/{EmbeddedDocs.Kebab(Contract.SubjectOf(service))}.md";
        return new()
        {
            Name = TagName(service),
            Description = ContractComments.Of(service),
            ExternalDocs = EmbeddedDocs.Pages.Contains(page)
                ? new() { Description = "Formulas, limits and sources", Url = new(EmbeddedDocs.Address(page), UriKind.Relative) }
                : null,
        };
    }

    private static string TagName(ServiceDescriptor service) => EmbeddedDocs.Words(Contract.SubjectOf(service));

    private static void AskForKey(OpenApiDocument document, StudioCalcOptions.SecurityOptions security)
    {
        if (security.ApiKeys.Count == 0)
        {
            return;
        }

        document.Components!.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>(StringComparer.Ordinal)
        {
            [Scheme] = new OpenApiSecurityScheme { Type = SecuritySchemeType.Http, Scheme = "bearer", Description = "One of the keys that this host was given." },
        };
        document.RegisterComponents();
        document.Security = [new() { [new(Scheme, document)] = [] }];
    }
}

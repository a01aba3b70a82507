using System.Text.Encodings.Web;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;
using ServiceDescriptor = Google.Protobuf.Reflection.ServiceDescriptor;

namespace StudioCalc.Host;

/// <summary>The contract as one page: every call, message, field and value.</summary>
internal static class ContractPage
{
    public static string Write() => PageFrame.Around("Contract", string.Concat(
    [
        "<h1>Contract</h1>\n<p>Names are in the JSON form. Numbers have the unit that their name carries.</p>\n",
        Contents(),
        .. Contract.Services.SelectMany(Calls),
        .. Contract.Files.SelectMany(Types),
    ]));

    private static string Contents()
    {
        var services = Contract.Services.Select(service =>
        {
            var calls = string.Join(", ", service.Methods.Select(method => $"<a href=\"#call-{method.Name}\">{method.Name}</a>"));
            return $"<li><a href=\"#service-{service.Name}\">{EmbeddedDocs.Words(Contract.SubjectOf(service))}</a>: {calls}</li>\n";
        });
        var files = string.Join(", ", Contract.Files.Select(file => $"<a href=\"#{FileId(file)}\">{FileTitle(file)}</a>"));
        return $"<ul id=\"contract-contents\">\n{string.Concat(services)}<li>Messages and values: {files}</li>\n</ul>\n";
    }

    private static IEnumerable<string> Calls(ServiceDescriptor service)
    {
        var title = EmbeddedDocs.Words(Contract.SubjectOf(service));
        var models = $"docs/models/{EmbeddedDocs.Kebab(Contract.SubjectOf(service))}.md";
        yield return $"<h2 id=\"service-{service.Name}\">{title}: calls</h2>\n{MarkdownText.Comment(ContractComments.Of(service))}";
        if (EmbeddedDocs.Pages.Contains(models))
        {
            yield return $"<p><a href=\"{EmbeddedDocs.Address(models)}\">Formulas, limits and sources</a></p>\n";
        }

        foreach (var method in service.Methods)
        {
            yield return Call(method);
        }
    }

    private static string Call(MethodDescriptor method)
    {
        var routes = string.Concat(HttpRoute.Of(method).Select(route => $"<li><code>{route.Verb} {route.Path}</code></li>\n"));
        var sample = EmbeddedDocs.Sample(method) is { } text
            ? $"<details><summary>Sample request</summary>\n<pre><code>{HtmlEncoder.Default.Encode(text)}</code></pre>\n</details>\n"
            : "";
        var answer = (method.IsServerStreaming ? "a stream of " : "") + ContractTables.Link(method.OutputType);
        return $"""
            <h3 id="call-{method.Name}">{method.Name}</h3>
            <ul>
            {routes}<li>gRPC <code>{Contract.FullMethodName(method)}</code></li>
            </ul>
            {MarkdownText.Comment(ContractComments.Of(method))}<p>Takes {ContractTables.Link(method.InputType)}, answers {answer}.</p>
            {sample}
            """;
    }

    private static IEnumerable<string> Types(FileDescriptor file) =>
    [
        $"<h2 id=\"{FileId(file)}\">{FileTitle(file)}: messages and values</h2>\n",
        .. file.MessageTypes.Select(ContractTables.Of),
        .. file.EnumTypes.Select(ContractTables.Of),
    ];

    private static string FileId(FileDescriptor file) => "file-" + Path.GetFileNameWithoutExtension(file.Name);

    private static string FileTitle(FileDescriptor file)
    {
        var words = Path.GetFileNameWithoutExtension(file.Name).Replace('_', ' ');
        return char.ToUpperInvariant(words[0]) + words[1..];
    }
}

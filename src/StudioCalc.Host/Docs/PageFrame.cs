using System.Text.Encodings.Web;

namespace StudioCalc.Host;

/// <summary>What is around every page of the documentation.</summary>
internal static class PageFrame
{
    public static string Around(string title, string content) => $"""
        <!DOCTYPE html>
        <html lang="en-GB">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>{HtmlEncoder.Default.Encode(title)} · StudioCalc</title>
        <link rel="icon" href="data:,">
        <link rel="stylesheet" href="/docs/docs.css">
        </head>
        <body>
        <nav id="docs-nav" aria-label="Documentation">
        <a href="/docs/index.html">Try calls</a>
        <a href="/docs/contract">Contract</a>
        <a href="/docs/refusals">Refusals</a>
        <a href="/docs/advisories">Advisories</a>
        <a href="/docs/glossary">Glossary</a>
        <a href="/openapi.json">OpenAPI</a>
        </nav>
        <main id="docs-content">
        {content}</main>
        </body>
        </html>

        """;
}

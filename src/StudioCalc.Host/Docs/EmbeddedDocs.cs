using System.Text;
using Google.Protobuf.Reflection;

namespace StudioCalc.Host;

/// <summary>The documentation files inside this assembly, by their path in the repository.</summary>
internal static class EmbeddedDocs
{
    public static IReadOnlyList<string> Pages { get; } =
        [.. typeof(EmbeddedDocs).Assembly.GetManifestResourceNames().Where(name => name.EndsWith(".md", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>The text of a file, or null when there is none.</summary>
    public static string? Text(string path)
    {
        using var stream = typeof(EmbeddedDocs).Assembly.GetManifestResourceStream(path);
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>The sample request of a call, or null when there is none.</summary>
    public static string? Sample(MethodDescriptor method) => Text($"docs/examples/{Kebab(method.Name)}.json");

    /// <summary>The address of a page such as <c>docs/refusals/required.md</c>.</summary>
    public static string Address(string page) => "/" + page[..^".md".Length];

    /// <summary><c>BalanceFill</c> as <c>balance-fill</c>.</summary>
    public static string Kebab(string name) =>
        string.Concat(name.Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(letter) : letter.ToString()));

    /// <summary><c>LightingRatio</c> as <c>Lighting ratio</c>.</summary>
    public static string Words(string name) =>
        string.Concat(name.Select((letter, i) => i > 0 && char.IsUpper(letter) ? " " + char.ToLowerInvariant(letter) : letter.ToString()));
}

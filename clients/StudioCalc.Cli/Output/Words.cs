using System.Globalization;
using System.Text.RegularExpressions;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>Names of the contract as words for people.</summary>
internal static partial class Words
{
    /// <summary><c>LightingRatio</c> as <c>lighting-ratio</c>.</summary>
    public static string Kebab(string pascal) => HumpStart().Replace(pascal, "-$0").ToLowerInvariant();

    /// <summary>The first sentence of a comment.</summary>
    public static string Summary(string comment) =>
        comment.IndexOf(". ", StringComparison.Ordinal) is var end and >= 0 ? comment[..(end + 1)] : comment;

    /// <summary><c>back_over_fill_stops</c> as <c>back over fill</c>.</summary>
    public static string Label(FieldDescriptor field) =>
        Iso().Replace(UnitSuffix.NameWithout(field).Replace('_', ' ').Replace("iso100", "at iso 100", StringComparison.Ordinal), "ISO");

    /// <summary><c>BALANCE_VARIABLE_FLASH_POWER</c> as <c>flash power</c>.</summary>
    public static string Value(EnumDescriptor type, int number) => type.FindValueByNumber(number) is { } value
        ? Iso().Replace(EnumText.Write(value).Replace('-', ' '), "ISO")
        : number.ToString(CultureInfo.InvariantCulture);

    /// <summary>One of many: <c>ways</c> as <c>way</c>, <c>remedies</c> as <c>remedy</c>.</summary>
    public static string Singular(string label) =>
        label.EndsWith("ies", StringComparison.Ordinal) ? label[..^3] + "y"
        : label.EndsWith('s') ? label[..^1]
        : label;

    /// <summary>With a capital first letter.</summary>
    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary><c>ShutterSpeed</c> as <c>shutter speed</c>.</summary>
    public static string Type(MessageDescriptor message) => Iso().Replace(Kebab(message.Name).Replace('-', ' '), "ISO");

    /// <summary>A call's comment without the sentences about status codes, which are for programs.</summary>
    public static string WithoutCodes(string comment) => Codes().Replace(comment, "").Trim();

    /// <summary>Some of many: <c>a, b or c</c>.</summary>
    public static string Or(IReadOnlyList<string> words) =>
        words.Count > 1 ? $"{string.Join(", ", words.SkipLast(1))} or {words[^1]}" : string.Concat(words);

    /// <summary>So many of a thing: <c>1 item</c>, <c>2 items</c>.</summary>
    public static string Count(int count, string thing) => string.Create(CultureInfo.InvariantCulture, $"{count} {thing}{(count == 1 ? "" : "s")}");

    [GeneratedRegex(@"(?<=^|\. )Fails with [A-Z_]+\b[^.]*\.( |\z)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Codes();

    [GeneratedRegex(@"\biso\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Iso();

    [GeneratedRegex("(?<!^)[A-Z]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex HumpStart();
}

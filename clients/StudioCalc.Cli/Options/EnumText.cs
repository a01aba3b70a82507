using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>Values of an enum as options name them: <c>BALANCE_VARIABLE_FLASH_POWER</c> is <c>flash-power</c>.</summary>
internal static class EnumText
{
    /// <summary>The values that may be chosen; 0 stands for none in the contract.</summary>
    public static IReadOnlyList<string> Choices(EnumDescriptor type) =>
        [.. type.Values.Where(value => value.Number != 0).Select(Write)];

    public static string Write(EnumValueDescriptor value) =>
        value.Name.Replace(Prefix(value.EnumDescriptor), "", StringComparison.Ordinal).Replace('_', '-').ToLowerInvariant();

    /// <exception cref="FormatException">No value is called so.</exception>
    public static int Read(EnumDescriptor type, string text) =>
        type.Values.FirstOrDefault(value => value.Number != 0 && IsNamed(value, text.Trim()))?.Number
        ?? throw new FormatException($"\"{text}\" is none of its values; write {Words.Or(Choices(type))}.");

    /// <summary>What all names of the type begin with.</summary>
    public static string Prefix(EnumDescriptor type) => Words.Kebab(type.Name).Replace('-', '_').ToUpperInvariant() + "_";

    private static bool IsNamed(EnumValueDescriptor value, string text) =>
        text.Equals(value.Name, StringComparison.OrdinalIgnoreCase) || text.Equals(Write(value), StringComparison.OrdinalIgnoreCase);
}

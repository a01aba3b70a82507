using System.Globalization;
using StudioCalc.Contracts;

namespace StudioCalc.Services;

/// <summary>Bounds of numbers, and their wording.</summary>
internal static class Bounds
{
    public static bool Hold(FieldRules rules, double value) =>
        (rules.Min is not { } min || (rules.MinOpen ? value > min : value >= min))
        && (rules.Max is not { } max || (rules.MaxOpen ? value < max : value <= max));

    public static string Range(FieldRules rules) => (rules.Min, rules.Max) switch
    {
        ({ } min, { } max) => $" {(rules.MinOpen ? "above" : "from")} {Show(min)} {(rules.MaxOpen ? "and under" : "to")} {Show(max)}",
        ({ } min, null) => $" {(rules.MinOpen ? "above" : "from")} {Show(min)}",
        (null, { } max) => $" {(rules.MaxOpen ? "under" : "up to")} {Show(max)}",
        _ => "",
    };

    private static string Show(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);
}

/// <summary>Wording of counts.</summary>
internal static class Counts
{
    public static string Range(FieldRules rules) => rules.MaxCount is { } most
        ? string.Create(CultureInfo.InvariantCulture, $"from {rules.MinCount} to {most}")
        : string.Create(CultureInfo.InvariantCulture, $"at least {rules.MinCount}");
}

using System.Globalization;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What was taken where a request told nothing, in words.</summary>
internal static class QuoteTexts
{
    public static StatedDefault Default(string name, string text) => new() { Name = name, Text = text, Basis = EstimateBasis.Assumption };

    public static string Of(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    public static string Of(ThreePoint time) => $"{Of(time.Shortest / 60)} to {Of(time.Longest / 60)} min, likely {Of(time.Likely / 60)} min";
}

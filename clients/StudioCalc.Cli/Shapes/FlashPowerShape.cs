using System.Globalization;
using System.Text.RegularExpressions;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>A flash head's power as its display shows it: <c>1/8</c>, or <c>1/8 +0.3</c> with stops added.</summary>
internal static partial class FlashPowerShape
{
    public static FlashPower Read(string text)
    {
        MarkText.RefuseComma(text);
        var match = Power().Match(text);
        if (!match.Success)
        {
            throw new FormatException($"\"{text}\" is not a power; write a fraction of full power such as 1/8, or \"1/8 +0.3\" with stops added.");
        }

        var power = FlashPower.At(match.Groups["fraction"].Value);
        if (match.Groups["offset"] is { Success: true } offset)
        {
            power.OffsetStops = NumberText.Read(offset.Value);
        }

        return power;
    }

    public static string? Write(FlashPower power) =>
        !power.HasFraction ? null
        : power.HasOffsetStops ? string.Create(CultureInfo.InvariantCulture, $"{power.Fraction} {power.OffsetStops:+0.###############;-0.###############;+0}")
        : power.Fraction;

    public static string Show(FlashPowerAnswer power) => power.OffsetStops < 0.005
        ? power.Fraction
        : string.Create(CultureInfo.InvariantCulture, $"{power.Fraction} +{power.OffsetStops:0.0#}");

    [GeneratedRegex(@"^\s*(?<fraction>[0-9]+/[0-9]+)\s*((?<offset>[+−-]\s*[0-9./ ]*[0-9])\s*(stops?)?)?\s*\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Power();
}

using System.Globalization;
using System.Text.RegularExpressions;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>An aperture as a meter shows it: <c>f/5.6</c>, <c>5.6</c>, or <c>f/5.6 7/10</c> with tenths.</summary>
internal static partial class ApertureShape
{
    public static Aperture Read(string text)
    {
        MarkText.RefuseComma(text);
        var match = Tenths().Match(text);
        return match.Success
            ? new()
            {
                Mark = match.Groups["mark"].Value,
                Tenths = uint.Parse(match.Groups["tenths"].Value, CultureInfo.InvariantCulture),
                Scale = StopScale.Tenth,
            }
            : Aperture.At(text.Trim());
    }

    public static string? Write(Aperture aperture) =>
        !aperture.HasMark ? null
        : aperture.HasTenths ? string.Create(CultureInfo.InvariantCulture, $"{aperture.Mark} {aperture.Tenths}/10")
        : aperture.Mark;

    public static string Show(ApertureAnswer aperture) => aperture switch
    {
        { HasMark: false } => $"f/{Units.Number(aperture.FNumber)}",
        { HasTenths: true } => $"{aperture.Mark} {aperture.Tenths}/10{MarkText.Exact(aperture.RestStops, "f/" + Units.Number(aperture.FNumber))}",
        _ => aperture.Mark + MarkText.Exact(aperture.RestStops, "f/" + Units.Number(aperture.FNumber)),
    };

    [GeneratedRegex(@"^\s*(?<mark>\S.*?)\s+(?<tenths>[0-9])/10\s*\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Tenths();
}

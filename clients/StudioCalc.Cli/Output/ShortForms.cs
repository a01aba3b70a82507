using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>Shared shapes of the contract as one short text, the way a photographer says them.</summary>
internal static class ShortForms
{
    /// <summary>The text, or null when the message has no short form.</summary>
    public static string? Of(IMessage message) => message switch
    {
        ApertureAnswer aperture => Aperture(aperture),
        ShutterSpeedAnswer speed => speed.HasMark ? speed.Mark + " s" + Exact(speed.RestStops, Units.Number(speed.TimeS) + " s") : $"{Units.Number(speed.TimeS)} s",
        IsoAnswer iso => iso.HasMark ? "ISO " + iso.Mark + Exact(iso.RestStops, Units.Number(iso.Speed)) : $"ISO {Units.Number(iso.Speed)}",
        FlashPowerAnswer power => power.OffsetStops < 0.005
            ? power.Fraction
            : string.Create(CultureInfo.InvariantCulture, $"{power.Fraction} +{power.OffsetStops:0.0#}"),
        LightingRatio ratio => string.Create(
            CultureInfo.InvariantCulture,
            $"{(ratio.KeyToFill < 1 ? $"1:{1 / ratio.KeyToFill:0.##}" : $"{ratio.KeyToFill:0.##}:1")} key to fill; {ratio.KeyPlusFillToFill:0.##}:1 key and fill to fill, where both reach"),
        Duration time => time.ToTimeSpan() switch
        {
            { TotalHours: >= 1 } span => string.Create(CultureInfo.InvariantCulture, $"{(int)span.TotalHours} h {span.Minutes} min"),
            { TotalMinutes: >= 1 } span => string.Create(CultureInfo.InvariantCulture, $"{span.Minutes} min {span.Seconds} s"),
            var span => Units.Number(span.TotalSeconds) + " s",
        },
        _ => null,
    };

    private static string Aperture(ApertureAnswer aperture) => aperture switch
    {
        { HasMark: false } => $"f/{Units.Number(aperture.FNumber)}",
        { HasTenths: true } => $"{aperture.Mark} {aperture.Tenths}/10{Exact(aperture.RestStops, "f/" + Units.Number(aperture.FNumber))}",
        _ => aperture.Mark + Exact(aperture.RestStops, "f/" + Units.Number(aperture.FNumber)),
    };

    // The exact value, where the mark does not tell it to a hundredth of a stop.
    private static string Exact(double restStops, string value) => Math.Abs(restStops) < 0.005 ? "" : $" (exactly {value})";
}

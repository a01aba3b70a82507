using System.Globalization;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Setups of the set in words: where the fill goes, and what to set.</summary>
internal static class SheetSetups
{
    private const double Metre = 1000;

    public static IReadOnlyList<SheetSetup> Of(PlanShootResponse plan) =>
        [.. plan.Setups.Select(setup => new SheetSetup(setup.Name, [.. Lines(setup)]))];

    /// <summary>An aperture as it is set.</summary>
    public static string Text(ApertureAnswer aperture) => aperture.HasMark ? aperture.Mark : "f/" + Number(aperture.FNumber);

    private static IEnumerable<string> Lines(PlannedSetup setup)
    {
        if (setup.Fill is { } fill)
        {
            yield return fill.Plan is { Ways: [var way, ..] }
                ? $"Fill at {Power(way.Power)}, {Number(way.Place.DistanceMm / Metre)} m away, {Number(way.ElevationDeg)}° up; meters "
                    + $"{Text(fill.TargetMeters)} at the plate."
                : "No pair of power and distance gives the wanted fill: see the answer for what would help.";
        }

        if (setup.Exposure is { } exposure)
        {
            yield return exposure.Solution is { } set
                ? $"{Text(set.Aperture)}, {Speed(set.ShutterSpeed)}, {Iso(set.Iso)}."
                : $"The exposure cannot be set; the nearest is {Text(exposure.NotReached.Nearest.Aperture)}, "
                    + $"{Speed(exposure.NotReached.Nearest.ShutterSpeed)}, {Iso(exposure.NotReached.Nearest.Iso)}.";
        }
    }

    private static string Power(FlashPowerAnswer power) => power.OffsetStops == 0
        ? $"{power.Fraction} power"
        : string.Create(CultureInfo.InvariantCulture, $"{power.Fraction} {power.OffsetStops:+0.0;-0.0} power");

    private static string Speed(ShutterSpeedAnswer speed) =>
        speed.HasMark ? speed.Mark.EndsWith('s') ? speed.Mark : speed.Mark + " s" : Number(speed.TimeS) + " s";

    private static string Iso(IsoAnswer iso) => "ISO " + (iso.HasMark ? iso.Mark : Number(iso.Speed));

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}

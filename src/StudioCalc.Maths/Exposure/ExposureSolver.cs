using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Solves for the aperture, shutter speed or ISO that gives a light the exposure asked for.</summary>
/// <remarks>
/// <code>
/// N = 2^((E + log2(t) + log2(S / 100) - n - k) / 2)               (27)
/// t = 2^(k + n - E + log2(N²) - log2(S / 100))                    (27)
/// S = 100 * 2^(k + n - E + log2(N² / t))                          (27)
/// </code>
/// <para>(4) solved with x = k, the compensation. n: light lost by filters and close focus. The setting goes to its
/// nearest mark; where that lies beyond a limit, to the limit itself. It is not reached where both the exact value and its
/// mark lie beyond. Film's reciprocity failure is left out.</para>
/// </remarks>
public static class ExposureSolver
{
    private const double Rounding = 1e-9;

    /// <summary>Solves for the unknown of <paramref name="input"/>.</summary>
    public static ExposureOutcome Solve<TTrail>(ExposureInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        var limits = input.Limits;
        trail.Section("loss in the lens");
        var nf = trail.Given("nf", input.FilterLossStops, "stops", "filters together");
        var c = trail.Given("c", input.CloseUpLossStops, "stops", "close focus");
        var n = trail.Let("n", nf + c, "stops", "losses add", "lens_loss_stops");

        trail.Section("setting");
        var E = trail.Given("E", input.Light.ExposureValueIso100Stops, "stops", "the light's exposure value at ISO 100");
        var k = trail.Given("k", input.CompensationStops, "stops", "compensation_stops");
        double N = input.FNumber, t = input.ShutterSpeedS, S = input.Iso;
        Placed placed;
        switch (input.Unknown)
        {
            case ExposureUnknown.Aperture:
                t = trail.Given("t", t, "s", "shutter speed");
                S = trail.Given("S", S, "", "ISO");
                N = trail.Let("N", Pow(2, (E + Log2(t) + Log2(S / 100) - n - k) / 2), "", "exposure (27)");
                placed = Place(
                    Marks.Aperture, N, input.Scale, limits.WidestFNumber, limits.SmallestFNumber,
                    ExposureObstacle.WidestAperture, ExposureObstacle.SmallestAperture);
                N = trail.Given("N", placed.Set, "", placed.Why);
                break;
            case ExposureUnknown.ShutterSpeed:
                N = trail.Given("N", N, "", "aperture");
                S = trail.Given("S", S, "", "ISO");
                t = trail.Let("t", Pow(2, k + n - E + Log2(N * N) - Log2(S / 100)), "s", "exposure (27)");
                placed = Place(
                    Marks.ShutterSpeed, t, input.Scale, limits.FastestShutterSpeedS, limits.SlowestShutterSpeedS,
                    ExposureObstacle.FastestShutterSpeed, ExposureObstacle.SlowestShutterSpeed);
                t = trail.Given("t", placed.Set, "s", placed.Why);
                break;
            case ExposureUnknown.Iso:
                N = trail.Given("N", N, "", "aperture");
                t = trail.Given("t", t, "s", "shutter speed");
                S = trail.Let("S", 100 * Pow(2, k + n - E + Log2(N * N / t)), "", "exposure (27)");
                placed = Place(
                    Marks.Iso, S, input.Scale, limits.LowestIso, limits.HighestIso,
                    ExposureObstacle.LowestIso, ExposureObstacle.HighestIso);
                S = trail.Given("S", placed.Set, "", placed.Why);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(input));
        }

        trail.Section("as set");
        var rest = trail.Let("rest", E - Log2(N * N / t) + Log2(S / 100) - n - k, "stops", "exposure (4) less k", "rest_stops");
        var fNumber = input.Unknown == ExposureUnknown.Aperture ? placed.Exact : N;
        return new()
        {
            Obstacle = placed.Obstacle,
            ShortfallStops = placed.ShortfallStops,
            FNumber = fNumber,
            ShutterSpeedS = input.Unknown == ExposureUnknown.ShutterSpeed ? placed.Exact : t,
            Iso = input.Unknown == ExposureUnknown.Iso ? placed.Exact : S,
            RestStops = rest,
            LensLossStops = n,
            EffectiveFNumber = CloseUpLoss.EffectiveFNumber(fNumber, c),
        };
    }

    private static Placed Place(
        MarkSeries marks,
        double wanted,
        StopScale scale,
        double lowest,
        double highest,
        ExposureObstacle belowLowest,
        ExposureObstacle aboveHighest)
    {
        var exact = Clamp(wanted, lowest, highest);
        var beyond = Abs(marks.Stops(wanted, exact));
        var nearest = marks.Nearest(wanted, scale)?.Value ?? wanted;
        var set = Clamp(nearest, lowest, highest);
        var isBeyond = beyond > Rounding && Abs(marks.Stops(nearest, set)) > Rounding;
        return isBeyond
            ? new(exact, exact, wanted < exact ? belowLowest : aboveHighest, beyond, "as far as the limit allows")
            : new(exact, set, ExposureObstacle.None, 0, set == nearest ? "nearest mark" : "the limit, as the nearest mark lies beyond it");
    }

    private readonly record struct Placed(
        double Exact, double Set, ExposureObstacle Obstacle, double ShortfallStops, string Why);
}

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A flash head in a series of frames.</summary>
public sealed record FlashRecyclingInput
{
    /// <summary>Time to recycle after a full-power flash. [s]</summary>
    public required double RecycleTimeS { get; init; }

    /// <summary>The shortest time between two flashes at any power. [s]</summary>
    public required double ShortestRecycleS { get; init; }

    /// <summary>Power of the head below full. [stops]</summary>
    public required double PowerBelowFullStops { get; init; }

    /// <summary>Stored energy at full power; null when it is not known. [J]</summary>
    public double? FullEnergyJ { get; init; }

    /// <summary>Full-power flashes that a charge gives; null for mains.</summary>
    public int? FullPowerFramesPerCharge { get; init; }

    /// <summary>Wanted frames; null when none are told.</summary>
    public int? Frames { get; init; }

    /// <summary>Wanted time between frames; 0 for as fast as the head goes. [s]</summary>
    public double WantedIntervalS { get; init; }
}

/// <summary>How fast a head follows, and for how long.</summary>
/// <remarks>
/// <code>
/// P  = 2^-x                     share of full power                (47)
/// i  = max(T P, floor)          interval in s                      (48)
/// J  = W P                      stored energy of a flash in J      (43)
/// k  = K / P                    frames to a charge                 (49)
/// s  = (f - 1) * max(i, wanted) first frame to last in s           (50)
/// z  = f / k                    charges                            (51)
/// </code>
/// <para>T: recycle time after full power in s, x: stops below full, K: full-power frames to a charge, f: wanted frames.
/// A charger of constant power refills in proportion to the energy that was spent; what the head draws between flashes,
/// cold batteries and a head that slows down when it is hot are left out. Source: common practice, no source; makers'
/// tables are the better word.</para>
/// </remarks>
public sealed record FlashRecycling
{
    /// <summary>The shortest time between two frames. [s]</summary>
    public required double IntervalS { get; init; }

    /// <summary>The time between two frames of the series: the wanted one where it is longer. [s]</summary>
    public required double SeriesIntervalS { get; init; }

    /// <summary>The most frames a second.</summary>
    public required double FramesPerS { get; init; }

    /// <summary>Stored energy of a flash; null when not known. [J]</summary>
    public double? EnergyJ { get; init; }

    /// <summary>Frames that a charge gives; null for mains.</summary>
    public double? FramesPerCharge { get; init; }

    /// <summary>Time from the first wanted frame to the last; null without frames. [s]</summary>
    public double? SeriesS { get; init; }

    /// <summary>Charges for the wanted frames; null without them, or for mains.</summary>
    public double? Charges { get; init; }

    /// <summary>Estimates for <paramref name="input"/>.</summary>
    public static FlashRecycling Estimate<TTrail>(FlashRecyclingInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("recycling");
        var T = trail.Given("T", Guard.Positive(input.RecycleTimeS), "s", "recycle_time_s");
        var floor = trail.Given("floor", Guard.Positive(input.ShortestRecycleS), "s", "shortest_recycle_s");
        var x = trail.Given("x", Guard.Finite(input.PowerBelowFullStops), "stops", "power, stops below full");
        var P = trail.Let("P", Pow(2, -x), "", "exposure (47)");
        var i = trail.Let("i", Max(T * P, floor), "s", "exposure (48)", "interval_s");
        double? energy = null;
        double? perCharge = null;
        double? series = null;
        double? charges = null;
        if (input.FullEnergyJ is { } full)
        {
            var W = trail.Given("W", Guard.Positive(full), "J", "full_energy_j");
            energy = trail.Let("J", W * P, "J", "exposure (43)", "energy_j");
        }

        if (input.FullPowerFramesPerCharge is { } frames)
        {
            var K = trail.Given("K", Guard.Positive(frames), "", "full_power_frames_per_charge");
            perCharge = trail.Let("k", K / P, "", "exposure (49)", "frames_per_charge");
        }

        if (input.Frames is { } wantedFrames)
        {
            var f = trail.Given("f", Guard.Positive(wantedFrames), "", "frames");
            var wanted = trail.Given("wanted", Guard.Finite(input.WantedIntervalS), "s", "wanted_interval_s, 0 without one");
            series = trail.Let("s", (f - 1) * Max(i, wanted), "s", "exposure (50)", "series_s");
            if (perCharge is { } k)
            {
                charges = trail.Let("z", f / k, "", "exposure (51)", "charges");
            }
        }

        return new()
        {
            IntervalS = i,
            SeriesIntervalS = Max(i, input.WantedIntervalS),
            EnergyJ = energy,
            FramesPerCharge = perCharge,
            SeriesS = series,
            Charges = charges,
            FramesPerS = trail.Let("rate", 1 / i, "1/s", "as many as there are intervals", "frames_per_s"),
        };
    }
}

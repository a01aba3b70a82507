namespace StudioCalc.Maths;

/// <summary>Settings that admit nearly the same exposure, all of them marks.</summary>
/// <param name="Settings">The settings, as exact values behind their marks.</param>
/// <param name="RestStops">Exposure over the one that is kept; positive is more. [stops]</param>
public readonly record struct EquivalentSettings(CameraSettings Settings, double RestStops)
{
    private const double Rounding = 1e-9;

    /// <summary>Lists the settings that keep an exposure, from the lowest ISO to the highest and for each from the widest
    /// aperture to the smallest.</summary>
    /// <remarks>
    /// <code>
    /// t' = t (N' / N)² S / S'                                      (28)
    /// </code>
    /// <para>N' and S' run over the marks within the limits; t' goes to its nearest mark, and the settings are left out
    /// where that mark lies beyond a limit or beyond the marks. Primes mark the listed settings.</para>
    /// </remarks>
    /// <param name="kept">The settings whose exposure is kept.</param>
    /// <param name="limits">How far the camera can be set. Its sync speed is not used: make it the fastest shutter speed.</param>
    /// <param name="varyIso">Whether the ISO runs too, between limits that are then finite; otherwise it is held as given.</param>
    /// <param name="scale">The steps of the dials.</param>
    public static IEnumerable<EquivalentSettings> List(CameraSettings kept, CameraLimits limits, bool varyIso, StopScale scale)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var isos = varyIso
            ? Marks.Iso.All(scale).Select(mark => mark.Value).Where(speed => Within(speed, limits.LowestIso, limits.HighestIso)).ToList()
            : [kept.Iso];
        var apertures = Marks.Aperture.All(scale)
            .Select(mark => mark.Value)
            .Where(number => Within(number, limits.WidestFNumber, limits.SmallestFNumber))
            .ToList();
        return from S in isos
               from N in apertures
               let exact = kept.ShutterSpeedS * (N / kept.FNumber) * (N / kept.FNumber) * kept.Iso / S
               let mark = Marks.ShutterSpeed.Nearest(exact, scale)
               where mark is not null && Within(mark.Value, limits.FastestShutterSpeedS, limits.SlowestShutterSpeedS)
               select new EquivalentSettings(new(N, mark.Value, S), Marks.ShutterSpeed.Stops(mark.Value, exact));
    }

    private static bool Within(double value, double lowest, double highest) =>
        value >= lowest * (1 - Rounding) && value <= highest * (1 + Rounding);
}

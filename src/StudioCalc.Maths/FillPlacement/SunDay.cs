namespace StudioCalc.Maths;

/// <summary>A day of the sun at a place, to the second.</summary>
/// <remarks>The day is scanned minute by minute, and each change within a minute is found by halving down to a second; a change and
/// its reverse within one minute are missed. Sunrise is the first rise of the sun's centre over a level horizon with common
/// refraction, sunset the last set.</remarks>
public sealed record SunDay
{
    private const long StepS = 60;

    private SunDay()
    {
    }

    /// <summary>Stretches of direct sun: first second with it, and first without it again or the end of the day.</summary>
    public required IReadOnlyList<(long StartS, long EndS)> Spells { get; init; }

    /// <summary>First second in which the sun is up after it was not; null where it does not rise.</summary>
    public long? SunriseS { get; init; }

    /// <summary>First second in which it is down again; null where it does not set.</summary>
    public long? SunsetS { get; init; }

    /// <summary>When it stands highest.</summary>
    public long NoonS { get; init; }

    /// <summary>Follows the sun from the first second of a day to the first of the next.</summary>
    /// <param name="startS">The first second, since 1 January 1970, 0:00 UTC.</param>
    /// <param name="endS">The first second of the next day, later.</param>
    /// <param name="latitudeDeg">Latitude, positive north. [deg]</param>
    /// <param name="longitudeDeg">Longitude, positive east. [deg]</param>
    /// <param name="beam">Window and plate.</param>
    public static SunDay Follow(long startS, long endS, double latitudeDeg, double longitudeDeg, SunBeam beam)
    {
        ArgumentNullException.ThrowIfNull(beam);
        var spells = new List<(long StartS, long EndS)>();
        long? sunrise = null, sunset = null;
        var (before, was) = (startS, At(startS));
        long? spell = beam.Reaches(was) ? startS : null;
        var (noon, highest) = (startS, was.TrueElevationDeg);
        while (before < endS)
        {
            var now = Math.Min(before + StepS, endS);
            var sun = At(now);
            if (now < endS && sun.TrueElevationDeg > highest)
            {
                (noon, highest) = (now, sun.TrueElevationDeg);
            }

            if (IsUp(was) != IsUp(sun))
            {
                var change = Change(before, now, IsUp);
                sunrise ??= IsUp(sun) ? change : null;
                sunset = IsUp(sun) ? sunset : change;
            }

            if (beam.Reaches(was) != beam.Reaches(sun))
            {
                var change = Change(before, now, beam.Reaches);
                if (spell is { } start)
                {
                    spells.Add((start, change));
                    spell = null;
                }
                else
                {
                    spell = change;
                }
            }

            (before, was) = (now, sun);
        }

        if (spell is { } open && open < endS)
        {
            spells.Add((open, endS));
        }

        return new()
        {
            Spells = spells,
            SunriseS = sunrise < endS ? sunrise : null,
            SunsetS = sunset < endS ? sunset : null,
            NoonS = Highest(Math.Max(startS, noon - StepS), Math.Min(endS - 1, noon + StepS)),
        };

        SunPosition At(long second) => SunPosition.At(second, latitudeDeg, longitudeDeg);

        // The first second in which what held before does not any more.
        long Change(long from, long to, Func<SunPosition, bool> holds)
        {
            var held = holds(At(from));
            while (to - from > 1)
            {
                var middle = from + (to - from) / 2;
                (from, to) = holds(At(middle)) == held ? (middle, to) : (from, middle);
            }

            return to;
        }

        long Highest(long from, long to)
        {
            while (to - from > 2)
            {
                var (a, b) = (from + (to - from) / 3, to - (to - from) / 3);
                (from, to) = At(a).TrueElevationDeg < At(b).TrueElevationDeg ? (a, to) : (from, b);
            }

            return At(from).TrueElevationDeg >= At(to).TrueElevationDeg ? from : to;
        }
    }

    private static bool IsUp(SunPosition sun) => sun.ElevationDeg > 0;
}

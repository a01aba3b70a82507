using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Focus settings that keep a thing whole within the sharp zone, as magnifications in the focused plane.</summary>
/// <remarks>
/// <code>
/// w  = N c / f
/// mn = (f - w xn) / (xn - f / p)     furthest: the zone starts at xn       (46)
/// mf = (f + w xf) / (xf - f / p)     nearest: the zone ends at xf          (47)
/// </code>
/// <para>xn, xf: nearest and farthest part from the entrance pupil, which stays while the lens of fixed focal length refocuses.
/// (46) and (47) are (10) and (11) solved for m. mn below 0: the part is sharp even with focus at infinity. A part nearer than
/// f / p is never sharp.</para>
/// </remarks>
/// <param name="Furthest">The smallest magnification, mn.</param>
/// <param name="Nearest">The largest magnification, mf; below mn where no setting keeps the thing whole.</param>
/// <param name="Importance">How much the thing matters.</param>
public sealed record FocusSettings(double Furthest, double Nearest, double Importance)
{
    private const double Rounding = 1e-9;

    /// <summary>The settings that keep a thing whole.</summary>
    /// <param name="lens">The lens, at any focus.</param>
    /// <param name="w">Set f-number times permitted blur over focal length.</param>
    /// <param name="nearMm">Nearest part from the entrance pupil xn. [mm]</param>
    /// <param name="farMm">Farthest part from the entrance pupil xf. [mm]</param>
    /// <param name="importance">How much the thing matters, not negative.</param>
    public static FocusSettings Of(LensFocus lens, double w, double nearMm, double farMm, double importance)
    {
        ArgumentNullException.ThrowIfNull(lens);
        var (f, p) = (lens.FocalLengthMm, lens.PupilMagnification);
        return nearMm <= f / p
            ? new(double.PositiveInfinity, double.NegativeInfinity, importance)
            : new((f - w * nearMm) / (nearMm - f / p), (f + w * farMm) / (farMm - f / p), importance);
    }

    /// <summary>The middle of those settings of the main thing that hold the most importance of the others; of several such
    /// ranges the one nearest to the middle of all its settings, and of two as near the one nearer to the camera.</summary>
    /// <param name="main">The settings of the main thing, some of them above 0.</param>
    /// <param name="others">The settings of the others.</param>
    public static double Best(FocusSettings main, IReadOnlyList<FocusSettings> others)
    {
        ArgumentNullException.ThrowIfNull(main);
        ArgumentNullException.ThrowIfNull(others);
        var (low, high) = (Max(main.Furthest, 0), main.Nearest);
        double[] ends =
        [
            .. others.SelectMany(other => new[] { other.Furthest, other.Nearest }).Where(end => end > low && end < high)
                .Append(low).Append(high).Order().Distinct(),
        ];

        // What is held changes at the ends only: look at each, and between each and the next.
        var places = ends.SkipLast(1).Zip(ends.Skip(1), (a, b) => new[] { a, (a + b) / 2 }).SelectMany(pair => pair).Append(ends[^1]).ToArray();
        var held = Array.ConvertAll(places, place => Held(others, place));
        var most = held.Max() - Rounding;
        var middle = (low + high) / 2;
        double best = middle, distance = double.PositiveInfinity;
        for (var i = places.Length - 1; i >= 0; i--)
        {
            var last = i;
            while (i >= 0 && held[i] >= most)
            {
                i--;
            }

            // The range from places[i + 1] to places[last], if any.
            if (i < last && Max(places[i + 1] - middle, middle - places[last]) is var away && Max(away, 0) < distance)
            {
                (best, distance) = ((places[i + 1] + places[last]) / 2, Max(away, 0));
            }
        }

        return best;
    }

    /// <summary>Importance of what a setting holds.</summary>
    /// <param name="things">The settings of the things.</param>
    /// <param name="magnification">The setting.</param>
    public static double Held(IReadOnlyList<FocusSettings> things, double magnification)
    {
        ArgumentNullException.ThrowIfNull(things);
        return things.Where(thing => thing.Furthest <= magnification && thing.Nearest >= magnification).Sum(thing => thing.Importance);
    }
}

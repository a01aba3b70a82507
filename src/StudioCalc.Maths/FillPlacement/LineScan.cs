using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The light along a line, looked through from end to end so that every distance with a wanted light is found.</summary>
/// <remarks>
/// <para>Light need not fall with distance: a flat receiver near a face whose lower edge is above it gets most at some distance, and a
/// receiver beside the line may be behind the face first. So the line is sampled at 32 distances a decade from 0.01 mm to 1 km, as finely
/// about the distance at which the face passes the receiver, and where the face crosses the receiver's horizon; each sample that is
/// above or below both its neighbours is refined to the turning point; between neighbours the light then rises or falls throughout. Each
/// crossing is narrowed by secants within a bracket that also halves, to 1e-12 stop or the last bit.</para>
/// </remarks>
public sealed class LineScan
{
    /// <summary>The nearest distance looked at. [mm]</summary>
    public const double NearestMm = 0.01;

    /// <summary>The farthest distance looked at. [mm]</summary>
    public const double FarthestMm = 1e6;

    private const int SamplesPerDecade = 32;
    private const double EndRounding = 1e-9;
    private const double LandedStops = 1e-7;

    private readonly double[] _distances;
    private readonly double[] _stops;

    /// <summary>Looks through a line.</summary>
    /// <param name="line">The line.</param>
    public LineScan(LightLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        Line = line;
        double[] at = [.. Samples(line).Where(d => d is >= NearestMm and <= FarthestMm).Distinct().Order()];
        double[] stops = [.. at.Select(line.LightStops)];
        double[] turns = [.. Turns(at, stops)];
        _distances = [.. at, .. turns];
        _stops = [.. stops, .. turns.Select(line.LightStops)];
        Array.Sort(_distances, _stops);
    }

    /// <summary>The line.</summary>
    public LightLine Line { get; }

    /// <summary>Every distance in a range with a wanted light, the nearest to the aim point first. [mm]</summary>
    /// <param name="wantedStops">The wanted light, in stops of e.</param>
    /// <param name="nearestMm">The near end of the range. [mm]</param>
    /// <param name="farthestMm">The far end. [mm]</param>
    public IReadOnlyList<double> Roots(double wantedStops, double nearestMm, double farthestMm)
    {
        var roots = new List<double>();
        var (at, stops) = Within(nearestMm * (1 - EndRounding), farthestMm * (1 + EndRounding));
        for (var i = 1; i < at.Count; i++)
        {
            if (stops[i - 1] >= wantedStops != stops[i] >= wantedStops)
            {
                var root = Crossing(at[i - 1], stops[i - 1], at[i], stops[i], wantedStops);
                if (Abs(Line.LightStops(root) - wantedStops) < LandedStops)
                {
                    roots.Add(Clamp(root, nearestMm, farthestMm));
                }
            }
            else if (i + 1 < at.Count && Abs(stops[i] - wantedStops) < EndRounding && stops[i] < wantedStops
                && stops[i] >= stops[i - 1] && stops[i] >= stops[i + 1])
            {
                roots.Add(Clamp(at[i], nearestMm, farthestMm));
            }
        }

        return roots;
    }

    /// <summary>The distance in a range with the light nearest to a wanted one; null where the whole range is dark. [mm]</summary>
    /// <param name="wantedStops">The wanted light, in stops of e.</param>
    /// <param name="nearestMm">The near end of the range. [mm]</param>
    /// <param name="farthestMm">The far end. [mm]</param>
    public double? Closest(double wantedStops, double nearestMm, double farthestMm)
    {
        var (at, stops) = Within(nearestMm, farthestMm);
        double? closest = null;
        var least = double.PositiveInfinity;
        for (var i = 0; i < at.Count; i++)
        {
            if (Abs(stops[i] - wantedStops) < least)
            {
                (closest, least) = (at[i], Abs(stops[i] - wantedStops));
            }
        }

        return closest;
    }

    /// <summary>The most light up to a distance, in stops of e; minus infinity without any.</summary>
    /// <param name="farthestMm">The distance. [mm]</param>
    public double MostStops(double farthestMm) => Within(NearestMm, Max(NearestMm, farthestMm)).Stops.Max();

    /// <summary>The distances about one within which its light stays within a band; 0 where it does down to the aim point. [mm]</summary>
    /// <param name="distanceMm">The distance, with light. [mm]</param>
    /// <param name="bandStops">The band to either side. [stops]</param>
    public (double NearMm, double FarMm) Band(double distanceMm, double bandStops)
    {
        var here = Line.LightStops(distanceMm);
        var next = Array.FindIndex(_distances, d => d > distanceMm);
        return (Leaves(next < 0 ? _distances.Length - 1 : next - 1, -1) ?? 0,
            (next < 0 ? null : Leaves(next, 1)) ?? FarthestMm);

        double? Leaves(int i, int step)
        {
            var (inside, insideStops) = (distanceMm, here);
            for (; i >= 0 && i < _distances.Length; i += step)
            {
                if (Abs(_stops[i] - here) > bandStops)
                {
                    var edge = _stops[i] > here ? here + bandStops : here - bandStops;
                    return step < 0
                        ? Crossing(_distances[i], _stops[i], inside, insideStops, edge)
                        : Crossing(inside, insideStops, _distances[i], _stops[i], edge);
                }

                (inside, insideStops) = (_distances[i], _stops[i]);
            }

            return null;
        }
    }

    private static IEnumerable<double> Samples(LightLine line)
    {
        var decades = Log10(FarthestMm / NearestMm);
        var count = (int)Ceiling(decades * SamplesPerDecade);
        for (var i = 0; i <= count; i++)
        {
            var step = NearestMm * Pow(10, decades * i / count);
            yield return step;
            if (line.AsideMm > 0 || Abs(line.FootMm) > 0)
            {
                yield return line.FootMm + step;
                yield return line.FootMm - step;
            }
        }

        yield return line.FootMm;
        foreach (var crossing in line.HorizonMm())
        {
            yield return crossing;
        }
    }

    private IEnumerable<double> Turns(double[] at, double[] stops)
    {
        const double noise = 1e-12;
        for (var i = 1; i < at.Length - 1; i++)
        {
            var (before, after) = (stops[i] - stops[i - 1], stops[i] - stops[i + 1]);
            if (!double.IsInfinity(stops[i]) && Max(Abs(before), Abs(after)) > noise && (before >= 0 == after >= 0))
            {
                yield return Turn(at[i - 1], at[i + 1], before >= 0 ? 1 : -1);
            }
        }
    }

    // Golden section.
    private double Turn(double a, double b, int sign)
    {
        var golden = (Sqrt(5) - 1) / 2;
        var (c, d) = (b - golden * (b - a), a + golden * (b - a));
        var (fc, fd) = (sign * Line.LightStops(c), sign * Line.LightStops(d));
        for (var i = 0; i < 60 && b - a > 1e-9 * b; i++)
        {
            if (fc >= fd)
            {
                (b, d, fd) = (d, c, fc);
                c = b - golden * (b - a);
                fc = sign * Line.LightStops(c);
            }
            else
            {
                (a, c, fc) = (c, d, fd);
                d = a + golden * (b - a);
                fd = sign * Line.LightStops(d);
            }
        }

        return fc >= fd ? c : d;
    }

    private (List<double> At, List<double> Stops) Within(double nearestMm, double farthestMm)
    {
        var (at, stops) = (new List<double> { nearestMm }, new List<double> { Line.LightStops(nearestMm) });
        for (var i = 0; i < _distances.Length; i++)
        {
            if (_distances[i] > nearestMm && _distances[i] < farthestMm)
            {
                at.Add(_distances[i]);
                stops.Add(_stops[i]);
            }
        }

        at.Add(farthestMm);
        stops.Add(Line.LightStops(farthestMm));
        return (at, stops);
    }

    // Between a and b; with a jump across the wanted light, where it jumps.
    private double Crossing(double a, double fa, double b, double fb, double wantedStops)
    {
        (fa, fb) = (fa - wantedStops, fb - wantedStops);
        for (var i = 0; i < 200 && b - a > 4e-16 * b; i++)
        {
            var middle = a + (b - a) / 2;
            var secant = double.IsFinite(fa) && double.IsFinite(fb) && i % 3 != 2 ? a - fa * (b - a) / (fb - fa) : middle;
            var m = secant > a && secant < b ? secant : middle;
            var fm = Line.LightStops(m) - wantedStops;
            if (Abs(fm) < 1e-12)
            {
                return m;
            }

            if (fm >= 0 == fa >= 0)
            {
                (a, fa) = (m, fm);
            }
            else
            {
                (b, fb) = (m, fm);
            }
        }

        return Abs(fa) < Abs(fb) ? a : b;
    }
}

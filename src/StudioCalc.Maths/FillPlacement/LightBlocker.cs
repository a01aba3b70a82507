using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A thing that may stand in the light, and may be grown or shrunk all around.</summary>
/// <remarks>Grown by g it holds every point within g of it; shrunk by g it is what keeps g away from its surface.</remarks>
public abstract record LightBlocker
{
    /// <summary>A point in its middle.</summary>
    public abstract Vector Middle { get; }

    /// <summary>The farthest that it reaches from its middle. [mm]</summary>
    public abstract double ReachMm { get; }

    /// <summary>Whether the straight way between two places meets it.</summary>
    /// <param name="from">One place.</param>
    /// <param name="to">The other.</param>
    /// <param name="grownMm">By how much it is grown; negative to shrink it. [mm]</param>
    public abstract bool Blocks(Vector from, Vector to, double grownMm = 0);
}

/// <summary>A ball.</summary>
/// <param name="Centre">Its centre.</param>
/// <param name="DiameterMm">Its diameter, above 0. [mm]</param>
public sealed record BallBlocker(Vector Centre, double DiameterMm) : LightBlocker
{
    /// <inheritdoc/>
    public override Vector Middle => Centre;

    /// <inheritdoc/>
    public override double ReachMm => DiameterMm / 2;

    /// <inheritdoc/>
    public override bool Blocks(Vector from, Vector to, double grownMm = 0)
    {
        var radius = DiameterMm / 2 + grownMm;
        var way = to - from;
        var share = Clamp((Centre - from).Dot(way) / way.Dot(way), 0, 1);
        var off = Centre - (from + way * share);
        return radius >= 0 && off.Dot(off) <= radius * radius;
    }
}

/// <summary>A round rod with flat ends.</summary>
/// <param name="From">Middle of one end.</param>
/// <param name="To">Middle of the other, elsewhere.</param>
/// <param name="DiameterMm">Its diameter, above 0. [mm]</param>
public sealed record TubeBlocker(Vector From, Vector To, double DiameterMm) : LightBlocker
{
    /// <inheritdoc/>
    public override Vector Middle => (From + To) * 0.5;

    /// <inheritdoc/>
    public override double ReachMm => Sqrt((To - From).Dot(To - From) + DiameterMm * DiameterMm) / 2;

    /// <inheritdoc/>
    public override bool Blocks(Vector from, Vector to, double grownMm = 0)
    {
        var axis = (To - From).Unit();
        var radius = DiameterMm / 2 + grownMm;
        var (start, end) = (-grownMm, (To - From).Length + grownMm);
        var (way, begin) = (to - from, from - From);
        var (low, high) = (0.0, 1.0);
        if (radius < 0 || start > end || !WayWithin.Cut(begin.Dot(axis), way.Dot(axis), start, end, ref low, ref high))
        {
            return false;
        }

        // Within the two ends: where the distance from the axis is at most the radius.
        var (across, off) = (way - axis * way.Dot(axis), begin - axis * begin.Dot(axis));
        var (a, b, c) = (across.Dot(across), across.Dot(off), off.Dot(off) - radius * radius);
        if (a == 0)
        {
            return c <= 0;
        }

        var root = b * b - a * c;
        return root >= 0 && (-b - Sqrt(root)) / a <= high && (-b + Sqrt(root)) / a >= low;
    }
}

/// <summary>A box with upright sides.</summary>
/// <param name="Base">Middle of its base.</param>
/// <param name="WidthMm">Its width, above 0. [mm]</param>
/// <param name="DepthMm">Its depth, above 0. [mm]</param>
/// <param name="HeightMm">Its height, above 0. [mm]</param>
/// <param name="TurnDeg">Its turn, counter-clockwise seen from above; at 0 its width runs from left to right. [deg]</param>
public sealed record BoxBlocker(Vector Base, double WidthMm, double DepthMm, double HeightMm, double TurnDeg = 0) : LightBlocker
{
    /// <inheritdoc/>
    public override Vector Middle => Base + Vector.Up * (HeightMm / 2);

    /// <inheritdoc/>
    public override double ReachMm => new Vector(WidthMm, DepthMm, HeightMm).Length / 2;

    /// <inheritdoc/>
    public override bool Blocks(Vector from, Vector to, double grownMm = 0)
    {
        var (sin, cos) = SinCos(TurnDeg * PI / 180);
        var (right, back) = (new Vector(cos, sin, 0), new Vector(-sin, cos, 0));
        var (way, begin) = (to - from, from - Middle);
        var (low, high) = (0.0, 1.0);
        return Cut(right, WidthMm / 2) && Cut(back, DepthMm / 2) && Cut(Vector.Up, HeightMm / 2);

        bool Cut(Vector axis, double half) =>
            half + grownMm >= 0 && WayWithin.Cut(begin.Dot(axis), way.Dot(axis), -half - grownMm, half + grownMm, ref low, ref high);
    }
}

/// <summary>The part of a way within bounds.</summary>
internal static class WayWithin
{
    /// <summary>Keeps the shares of the way at which begin + share * step lies from start to end; false where none is left.</summary>
    public static bool Cut(double begin, double step, double start, double end, ref double low, ref double high)
    {
        if (step == 0)
        {
            return begin >= start && begin <= end;
        }

        var (a, b) = ((start - begin) / step, (end - begin) / step);
        (low, high) = (Max(low, Min(a, b)), Min(high, Max(a, b)));
        return low <= high;
    }
}

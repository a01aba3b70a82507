namespace StudioCalc.Maths;

/// <summary>A rectangle that gives light back from one side.</summary>
/// <param name="Axes">Where it stands, and where its lit side faces.</param>
/// <param name="WidthMm">Its width. [mm]</param>
/// <param name="HeightMm">Its height. [mm]</param>
public sealed record BounceFace(FaceAxes Axes, double WidthMm, double HeightMm)
{
    /// <summary>Its outline as a face.</summary>
    public LightFace Face { get; } = LightFace.Of(Axes, FaceOutline.Rectangle(WidthMm, HeightMm));

    /// <summary>Turned in its place to face a direction.</summary>
    /// <param name="facing">The unit direction.</param>
    /// <param name="rollDeg">Turn about it. [deg]</param>
    public BounceFace Turned(Vector facing, double rollDeg) => new(new(Axes.Centre, Axes.Centre + facing, rollDeg), WidthMm, HeightMm);

    /// <summary>Whether the straight way between two places passes through it, its edge included.</summary>
    public bool IsBetween(Vector from, Vector to)
    {
        var (a, b) = ((from - Axes.Centre).Dot(Axes.Facing), (to - Axes.Centre).Dot(Axes.Facing));
        return a * b < 0 && Holds(from + (to - from) * (a / (a - b)));
    }

    /// <summary>Whether a place of its plane lies on it.</summary>
    public bool Holds(Vector place)
    {
        var way = place - Axes.Centre;
        return Math.Abs(way.Dot(Axes.Facing)) <= 1e-6 * (1 + way.Length)
            && Math.Abs(way.Dot(Axes.Right)) <= WidthMm / 2 && Math.Abs(way.Dot(Axes.Up)) <= HeightMm / 2;
    }

    /// <summary>Distance from a place to the nearest point of it. [mm]</summary>
    public double DistanceMm(Vector place)
    {
        var way = place - Axes.Centre;
        var nearest = Axes.At(
            Math.Clamp(way.Dot(Axes.Right), -WidthMm / 2, WidthMm / 2), Math.Clamp(way.Dot(Axes.Up), -HeightMm / 2, HeightMm / 2));
        return (place - nearest).Length;
    }
}

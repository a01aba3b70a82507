using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A flat black card that stands before what would mirror.</summary>
/// <remarks>It stands square to the mean of the mirrored directions that meet the thing, and holds all of them, as far as half
/// a cell beyond those traced. On a waving surface it holds the whole thing as seen from where it mirrors.</remarks>
/// <param name="Centre">Its middle.</param>
/// <param name="WidthMm">Its level side. [mm]</param>
/// <param name="HeightMm">Its other side. [mm]</param>
/// <param name="Towards">The unit direction in which it stands from the reflection; its face looks back along it.</param>
public sealed record MirrorCard(Vector Centre, double WidthMm, double HeightMm, Vector Towards)
{
    // Beyond this angle, 78 degrees from square, a flat card would have to be far larger than the thing.
    private const double LeastCosine = 0.2;
    private const double LeastSideMm = 1;
    private const double Spare = 1 + 1e-9;

    /// <summary>The card as a thing that rays meet.</summary>
    public MirrorThing Face { get; } = new MirrorFace(
        LightFace.Of(new(Centre, Centre - Towards), FaceOutline.Rectangle(WidthMm, HeightMm)), hasTwoSides: true);

    /// <summary>Its distance from a place, to the nearest point of it. [mm]</summary>
    public double DistanceMm(Vector place) => new BounceFace(new(Centre, Centre - Towards), WidthMm, HeightMm).DistanceMm(place);

    internal static MirrorCard? For(MirrorGrid grid, MirrorThing thing, MirroredThingView reflection, double distanceMm, bool isWaving)
    {
        var met = grid.Lines.Where(line => line.Thing == reflection.Thing).ToList();
        var mean = met.Aggregate(default(Vector), (sum, line) => sum + line.Way * line.Weight);
        if (!(mean.Length > 0))
        {
            return null;
        }

        var towards = mean.Unit();
        var axes = new FaceAxes(reflection.Middle + towards * distanceMm, reflection.Middle);
        var (low, high) = ((X: double.PositiveInfinity, Y: double.PositiveInfinity), (X: double.NegativeInfinity, Y: double.NegativeInfinity));
        foreach (var line in met)
        {
            if (!Hold(line.Point.Place, line.Way, line.Reach))
            {
                return null;
            }

            // Cells at an edge were divided: their neighbours do not meet the thing.
            var about = isWaving || line.Size == grid.CellSize ? line.Size / 2 : line.Size;
            foreach (var (across, along) in (ReadOnlySpan<(int, int)>)[(-1, -1), (-1, 1), (1, -1), (1, 1)])
            {
                if (grid.Around(Clamp(line.Across + across * about, 0, 1), Clamp(line.Along + along * about, 0, 1)) is { } corner
                    && !(isWaving ? HoldAll(corner.Point.Place) : Hold(corner.Point.Place, corner.Way, double.PositiveInfinity)))
                {
                    return null;
                }
            }
        }

        return new(
            axes.At((low.X + high.X) / 2, (low.Y + high.Y) / 2),
            Max(LeastSideMm, (high.X - low.X) * Spare), Max(LeastSideMm, (high.Y - low.Y) * Spare), towards);

        // Takes a ray in; false where the card would not stand square enough, or not before what the ray meets.
        bool Hold(Vector from, Vector way, double reach)
        {
            var cosine = way.Dot(towards);
            var at = (distanceMm - (from - reflection.Middle).Dot(towards)) / cosine;
            if (!(cosine >= LeastCosine && at > 0 && at < reach))
            {
                return false;
            }

            var off = from + way * at - axes.Centre;
            var (x, y) = (off.Dot(axes.Right), off.Dot(axes.Up));
            low = (Min(low.X, x), Min(low.Y, y));
            high = (Max(high.X, x), Max(high.Y, y));
            return true;
        }

        bool HoldAll(Vector from) => thing.Hull(from).All(corner => Hold(from, (corner - from).Unit(), (corner - from).Length));
    }
}

namespace StudioCalc.Maths;

/// <summary>One side of a plane.</summary>
/// <param name="Point">A point of the plane. [mm]</param>
/// <param name="Inward">The direction of the side.</param>
public readonly record struct HalfSpace(Vector Point, Vector Inward)
{
    /// <summary>Whether a place is on the side of all of them.</summary>
    public static bool AllHold(ReadOnlySpan<HalfSpace> spaces, Vector place)
    {
        foreach (var space in spaces)
        {
            if (space.Height(place) < 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The part of a polygon on the side of all of them.</summary>
    /// <param name="corners">Its corners in order.</param>
    /// <param name="spaces">The half-spaces.</param>
    public static Vector[] Cut(Vector[] corners, ReadOnlySpan<HalfSpace> spaces)
    {
        var left = corners;
        foreach (var space in spaces)
        {
            if (left.Length == 0)
            {
                break;
            }

            left = space.Cut(left);
        }

        return left;
    }

    private Vector[] Cut(Vector[] corners)
    {
        var left = new List<Vector>(corners.Length + 4);
        var (from, fromHeight) = (corners[^1], Height(corners[^1]));
        foreach (var to in corners)
        {
            var height = Height(to);
            if (fromHeight < 0 != height < 0)
            {
                left.Add(from + (to - from) * (fromHeight / (fromHeight - height)));
            }

            if (height >= 0)
            {
                left.Add(to);
            }

            (from, fromHeight) = (to, height);
        }

        return [.. left];
    }

    private double Height(Vector place) => (place - Point).Dot(Inward);
}

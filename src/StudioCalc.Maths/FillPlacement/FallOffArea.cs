namespace StudioCalc.Maths;

/// <summary>A level area with points on it, its edges included.</summary>
/// <remarks>
/// <code>
/// x = xm - w / 2 + i w / (columns - 1),   y = ym - h / 2 + j h / (rows - 1)     (17)
/// </code>
/// <para>xm, ym: its middle. w, h: width and depth. i, j: column from the left and row from the front, counted from 0.</para>
/// </remarks>
/// <param name="Middle">Its middle. [mm]</param>
/// <param name="WidthMm">Width from left to right. [mm]</param>
/// <param name="DepthMm">Depth from front to back. [mm]</param>
/// <param name="Columns">Points across, 2 or more.</param>
/// <param name="Rows">Points from front to back, 2 or more.</param>
public sealed record FallOffArea(Vector Middle, double WidthMm, double DepthMm, int Columns, int Rows)
{
    /// <summary>Middle of the front edge.</summary>
    public Vector Front => Middle - new Vector(0, DepthMm / 2, 0);

    /// <summary>Middle of the back edge.</summary>
    public Vector Back => Middle + new Vector(0, DepthMm / 2, 0);

    /// <summary>Middle of the left edge.</summary>
    public Vector Left => Middle - new Vector(WidthMm / 2, 0, 0);

    /// <summary>Middle of the right edge.</summary>
    public Vector Right => Middle + new Vector(WidthMm / 2, 0, 0);

    /// <summary>A point. (17)</summary>
    /// <param name="column">Its column, from the left.</param>
    /// <param name="row">Its row, from the front.</param>
    public Vector At(int column, int row) =>
        Middle + new Vector(Offset(column, Columns, WidthMm), Offset(row, Rows, DepthMm), 0);

    /// <summary>Whether a place is one of the points, or the middle of the area or of an edge.</summary>
    /// <param name="place">The place.</param>
    public bool Holds(Vector place)
    {
        if (place == Middle || place == Front || place == Back || place == Left || place == Right)
        {
            return true;
        }

        var column = (int)Math.Clamp(Math.Round((place.X - Left.X) / WidthMm * (Columns - 1)), 0, Columns - 1);
        var row = (int)Math.Clamp(Math.Round((place.Y - Front.Y) / DepthMm * (Rows - 1)), 0, Rows - 1);
        return place == At(column, row);
    }

    // Opposite points get exactly opposite offsets, and the edges exactly half the size.
    private static double Offset(int index, int points, double size) => size / 2 * ((2.0 * index - (points - 1)) / (points - 1));
}

/// <summary>Which way the surface of an area faces.</summary>
/// <param name="Target">A unit direction, or the place that every point faces.</param>
/// <param name="IsPlace">Whether it is a place.</param>
public readonly record struct AreaFacing(Vector Target, bool IsPlace)
{
    /// <summary>The unit direction that a point faces.</summary>
    /// <param name="place">The point; it must differ from the place that is faced.</param>
    public Vector From(Vector place) => IsPlace ? (Target - place).Unit() : Target;
}

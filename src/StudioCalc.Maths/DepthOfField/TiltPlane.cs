using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A plane of focus square to the vertical plane through the axis of the camera, as the lens sees it.</summary>
/// <param name="HingeMm">Distance J from the lens to the plane, parallel to the sensor: positive is below; infinite where the plane
/// is parallel to the sensor. [mm]</param>
/// <param name="CrossingMm">Distance u along the axis at which the plane crosses it: infinite where it never does, negative
/// behind the lens. [mm]</param>
/// <remarks>
/// <code>
/// d = h / sin(e)                       J = d tan(e)            u = d         (70)
/// g = (y2 - y1) / (x2 - x1)            J = g x1 - y1           u = J / g    (71)
/// </code>
/// <para>Table: e: how steeply the axis looks down on it; d: along the axis, h: straight down from the lens. J is the height of the
/// camera over the table only where the camera is level. Points: x along the axis, y over it. Source: plane geometry;
/// docs/models/depth-of-field.md.</para>
/// </remarks>
public sealed record TiltPlane(double HingeMm, double CrossingMm)
{
    /// <summary>One over the crossing u: 0 where the plane never crosses the axis. [1/mm]</summary>
    public double PerCrossing => 1 / CrossingMm;

    /// <summary>Whether the plane is parallel to the sensor.</summary>
    public bool IsParallel => double.IsInfinity(HingeMm);

    /// <summary>The table from its distance along the axis. (70)</summary>
    /// <param name="elevationDeg">How steeply the axis looks down e, above 0 up to 90. [deg]</param>
    /// <param name="axisMm">Distance along the axis d, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static TiltPlane OfTable<TTrail>(double elevationDeg, double axisMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("table");
        var d = trail.Given("d", Guard.Positive(axisMm), "mm", "along the axis from the lens to the table");
        if (elevationDeg == 90)
        {
            return new(double.PositiveInfinity, d);
        }

        var e = trail.Given("e", Guard.Positive(elevationDeg), "deg", "elevation_deg");
        var degrees = trail.Given("degrees", 180 / PI, "deg", "degrees to a radian");
        return new(trail.Let("J", d * Tan(e / degrees), "mm", "depth of field (70)"), d);
    }

    /// <summary>Distance along the axis to the table from its distance straight down. (70) [mm]</summary>
    /// <param name="elevationDeg">How steeply the axis looks down e, above 0 up to 90. [deg]</param>
    /// <param name="heightMm">Distance straight down h, above 0. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double AxisMm<TTrail>(double elevationDeg, double heightMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("table");
        var h = trail.Given("h", Guard.Positive(heightMm), "mm", "straight down from the lens to the table");
        var e = trail.Given("e", Guard.Positive(elevationDeg), "deg", "elevation_deg");
        var degrees = trail.Given("degrees", 180 / PI, "deg", "degrees to a radian");
        return trail.Let("d", h / Sin(e / degrees), "mm", "depth of field (70)");
    }

    /// <summary>Through two points. (71)</summary>
    /// <param name="near">The nearer point: x along the axis, above 0, and y over it. [mm]</param>
    /// <param name="far">The farther point, at no smaller x, and another point. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static TiltPlane OfPoints<TTrail>((double X, double Y) near, (double X, double Y) far, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("points");
        Guard.NotNegative(far.X - near.X);
        var x1 = trail.Given("x1", Guard.Positive(near.X), "mm", "points.near.distance_mm");
        if (far.X == x1)
        {
            return new(double.PositiveInfinity, x1);
        }

        var y1 = trail.Given("y1", Guard.Finite(near.Y), "mm", "points.near.height_mm");
        var x2 = trail.Given("x2", Guard.Finite(far.X), "mm", "points.far.distance_mm");
        var y2 = trail.Given("y2", Guard.Finite(far.Y), "mm", "points.far.height_mm");
        var g = trail.Let("g", (y2 - y1) / (x2 - x1), "", "depth of field (71)");
        var J = trail.Let("J", g * x1 - y1, "mm", "depth of field (71)");
        return new(J, J == 0 ? 0 : J / g);
    }
}

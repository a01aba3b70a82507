using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A camera over the dish: what it projects where, in the plane through its aim point.</summary>
/// <remarks>
/// <code>
/// R = f (1 / m + 1 / p)          distance of the entrance pupil from the plane     (1)
/// m = 1 / (R / f - 1 / p)                                                          (2)
/// W = w / m                      width of the field; its height likewise           (3)
/// c = a + R (sin A cos E, -cos A cos E, sin E)   entrance pupil                    (4)
/// d = -(s - a) . (c - a) / R     depth of a place s behind the plane               (5)
/// x = (s - a) . r R / (R + d)    its place in the plane; upwards likewise          (6)
/// </code>
/// <para>f: focal length at this focus; p: pupil magnification; m: magnification; w: width of the sensor; a: aim point; A, E:
/// azimuth and elevation; r: direction to the right in the picture, level. A far camera has R infinite and d and x
/// without it. Source: derived in docs/models/plate-view.md; (1) is equation (4) of depth of field.</para>
/// </remarks>
public sealed class ViewGeometry
{
    private const double FarMm = 1e6;

    /// <summary>A camera.</summary>
    /// <param name="aim">The point that the axis of the lens meets. [mm]</param>
    /// <param name="azimuthDeg">Its azimuth: 0 at the front, 90 at the right. [deg]</param>
    /// <param name="elevationDeg">Its elevation: 0 level with the table, 90 straight down. [deg]</param>
    /// <param name="distanceMm">Distance R of its entrance pupil from the aim point, positive; null for a far camera. [mm]</param>
    /// <param name="fieldWidthMm">Width W of the field in the plane through the aim point, positive. [mm]</param>
    /// <param name="fieldHeightMm">Its height, positive. [mm]</param>
    public ViewGeometry(
        Vector aim, double azimuthDeg, double elevationDeg, double? distanceMm, double fieldWidthMm, double fieldHeightMm)
    {
        (Aim, AzimuthDeg, ElevationDeg) = (aim, azimuthDeg, elevationDeg);
        (DistanceMm, FieldWidthMm, FieldHeightMm) = (distanceMm, fieldWidthMm, fieldHeightMm);
        Towards = Vector.Towards(azimuthDeg, elevationDeg);
        var (sin, cos) = SinCos(azimuthDeg * PI / 180);
        Right = new(cos, sin, 0);
        Up = Towards.Cross(Right);
        Eye = aim + Towards * (distanceMm ?? FarMm);
    }

    /// <summary>A camera by its lens, focused on the plane through the aim point, or a far one.</summary>
    /// <param name="aim">The point that the axis of the lens meets. [mm]</param>
    /// <param name="azimuthDeg">Its azimuth. [deg]</param>
    /// <param name="elevationDeg">Its elevation. [deg]</param>
    /// <param name="lens">The lens, not focused at infinity; null for a far camera. The trail holds f, p and m already.</param>
    /// <param name="farFieldWidthMm">Width of the field of a far camera, positive. [mm]</param>
    /// <param name="sensorWidthMm">Width of the sensor as it is held, positive. [mm]</param>
    /// <param name="sensorHeightMm">Its height, positive. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static ViewGeometry For<TTrail>(
        Vector aim, double azimuthDeg, double elevationDeg, LensFocus? lens, double farFieldWidthMm, double sensorWidthMm, double sensorHeightMm,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var w = trail.Given("w", Guard.Positive(sensorWidthMm), "mm", "width of the sensor");
        var h = trail.Given("h", Guard.Positive(sensorHeightMm), "mm", "height of the sensor");
        if (lens is null)
        {
            var Wf = trail.Given("Wf", Guard.Positive(farFieldWidthMm), "mm", "far_field_width_mm", "camera.field_width_mm");
            return new(
                aim, azimuthDeg, elevationDeg, null, Wf, trail.Let("Hf", Wf * h / w, "mm", "plate view (3)", "camera.field_height_mm"));
        }

        var (f, p, m) = (lens.FocalLengthMm, lens.PupilMagnification, lens.Magnification);
        var R = trail.Let("R", f * (1 / m + 1 / p), "mm", "plate view (1)", "camera.distance_mm");
        var width = trail.Let("Wf", w / m, "mm", "plate view (3)", "camera.field_width_mm");
        return new(aim, azimuthDeg, elevationDeg, R, width, trail.Let("Hf", h / m, "mm", "plate view (3)", "camera.field_height_mm"));
    }

    /// <summary>Magnification of a lens in the plane at a distance from its entrance pupil; not positive where it focuses no nearer.
    /// (2)</summary>
    /// <param name="focalLengthMm">Focal length f at this focus, positive; the trail holds it already. [mm]</param>
    /// <param name="pupilMagnification">Pupil magnification p, positive; the trail holds it already.</param>
    /// <param name="distanceMm">Distance R, positive. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double MagnificationAt<TTrail>(double focalLengthMm, double pupilMagnification, double distanceMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (f, p) = (Guard.Positive(focalLengthMm), Guard.Positive(pupilMagnification));
        if (!(Guard.Positive(distanceMm) / f > 1 / p))
        {
            return 0;
        }

        var R = trail.Given("R", distanceMm, "mm", "distance_mm");
        return trail.Let("m", 1 / (R / f - 1 / p), "", "plate view (2)");
    }

    /// <summary>The aim point. [mm]</summary>
    public Vector Aim { get; }

    /// <summary>Azimuth. [deg]</summary>
    public double AzimuthDeg { get; }

    /// <summary>Elevation. [deg]</summary>
    public double ElevationDeg { get; }

    /// <summary>Distance of the entrance pupil from the aim point; null for a far camera. [mm]</summary>
    public double? DistanceMm { get; }

    /// <summary>Width of the field in the plane through the aim point. [mm]</summary>
    public double FieldWidthMm { get; }

    /// <summary>Height of the field. [mm]</summary>
    public double FieldHeightMm { get; }

    /// <summary>Direction from the aim point to the camera.</summary>
    public Vector Towards { get; }

    /// <summary>Direction to the right in the picture.</summary>
    public Vector Right { get; }

    /// <summary>Direction upwards in the picture.</summary>
    public Vector Up { get; }

    /// <summary>The entrance pupil; of a far camera, a place far out along its axis. [mm]</summary>
    public Vector Eye { get; }

    /// <summary>The same camera from another direction.</summary>
    /// <param name="azimuthDeg">Its azimuth. [deg]</param>
    /// <param name="elevationDeg">Its elevation. [deg]</param>
    public ViewGeometry From(double azimuthDeg, double elevationDeg) =>
        new(Aim, azimuthDeg, elevationDeg, DistanceMm, FieldWidthMm, FieldHeightMm);

    /// <summary>Depth d of a place behind the plane through the aim point; negative is nearer to the camera. [mm]</summary>
    public double DepthOf(Vector place) => -(place - Aim).Dot(Towards);

    /// <summary>Where a place before the entrance pupil lies in the plane through the aim point. [mm]</summary>
    public (double RightMm, double UpMm) Project(Vector place)
    {
        var from = place - Aim;
        var scale = DistanceMm is { } R ? R / (R + DepthOf(place)) : 1;
        return (from.Dot(Right) * scale, from.Dot(Up) * scale);
    }

    /// <summary>Where the line of sight to a place before the entrance pupil passes the plane through the aim point, and the t of the
    /// place on <see cref="Through"/>. [mm]</summary>
    internal (double RightMm, double UpMm, double T) SightOf(Vector place)
    {
        var (x, y) = Project(place);
        return (x, y, 1 + DepthOf(place) / (DistanceMm ?? FarMm));
    }

    /// <summary>A far camera straight above the origin, by which plans are drawn: to the right is x, upwards y.</summary>
    public static ViewGeometry Above { get; } = new(default, 0, 90, null, 1, 1);

    /// <summary>A place in the plane through the aim point. [mm]</summary>
    /// <param name="rightMm">To the right of the aim point. [mm]</param>
    /// <param name="upMm">Upwards from it, in the picture. [mm]</param>
    public Vector InPlane(double rightMm, double upMm) => Aim + Right * rightMm + Up * upMm;

    /// <summary>The line of sight through a place in the plane through the aim point.</summary>
    /// <param name="rightMm">To the right of the aim point. [mm]</param>
    /// <param name="upMm">Upwards from it, in the picture. [mm]</param>
    public SightLine Through(double rightMm, double upMm)
    {
        var place = InPlane(rightMm, upMm);
        return DistanceMm is null ? new(place + Towards * FarMm, Towards * -FarMm) : new(Eye, place - Eye);
    }

    /// <summary>The line of sight to a place: t is 0 at the camera and 1 at the place.</summary>
    public SightLine To(Vector place) =>
        DistanceMm is null ? new(place + Towards * FarMm, Towards * -FarMm) : new(Eye, place - Eye);
}

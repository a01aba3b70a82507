using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A camera over the dish, as a request tells it.</summary>
/// <param name="Geometry">Where it stands and what it frames.</param>
/// <param name="Lens">Its lens, focused on the plane through the aim point; null for a far camera.</param>
/// <param name="Sensor">Its sensor.</param>
internal sealed record ViewCameraRead(ViewGeometry Geometry, LensFocus? Lens, SensorRead Sensor);

/// <summary>Reads cameras over the dish.</summary>
internal static class ViewCameraReader
{
    private const double LargestMagnification = 20;

    /// <summary>Reads a camera; null after noting what is bad.</summary>
    public static ViewCameraRead? ReadViewCamera<TTrail>(this RequestContext context, ViewCamera camera, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var isFar = camera.PlaceCase == ViewCamera.PlaceOneofCase.FarFieldWidthMm;
        var sensor = context.ReadSensor(camera.Sensor, path[ViewCamera.SensorFieldNumber]);
        if (!context.CheckLens(camera, isFar, path[ViewCamera.LensFieldNumber]) || sensor is null)
        {
            return null;
        }

        var direction = camera.Direction;
        var elevation = context.ReadElevation(
            direction.ElevationDeg, camera.ElevationOrigin,
            path[ViewCamera.DirectionFieldNumber][CameraDirection.ElevationDegFieldNumber], ref trail, "camera.elevation_deg");
        trail.Section("camera");
        var lens = isFar ? null : context.ReadCloseness(camera, sensor, path, ref trail);
        if (!isFar && lens is null)
        {
            return null;
        }

        var aim = direction.AimPoint is { } point ? point.ToVector() : default;
        return new(
            ViewGeometry.For(aim, direction.AzimuthDeg, elevation, lens, camera.FarFieldWidthMm, sensor.WidthMm, sensor.HeightMm, ref trail),
            lens, sensor);
    }

    /// <summary>Refuses what does not lie before the camera as a whole.</summary>
    public static void CheckPlaces(this RequestContext context, ViewScene scene, ViewGeometry camera, FieldPath path)
    {
        for (var i = 0; i < scene.Count; i++)
        {
            if (scene.LiesBefore(i, camera))
            {
                continue;
            }

            context.Violations.Add(
                i < scene.Solids.Count
                    ? path[Scene.ComponentsFieldNumber].At(i)[ViewComponent.BaseFieldNumber].ToString()
                    : path[Scene.VesselsFieldNumber].At(i - scene.Solids.Count)[Vessel.BaseFieldNumber].ToString(),
                RefusalReason.OutOfRange,
                "All of it must lie before the entrance pupil, by a fiftieth of the camera's distance at least.");
        }
    }

    private static bool CheckLens(this RequestContext context, ViewCamera camera, bool isFar, FieldPath path)
    {
        if (isFar)
        {
            if (camera.Lens is null)
            {
                return true;
            }

            context.Violations.Add(path.ToString(), RefusalReason.Conflict, "A far camera has parallel sight lines, which no lens changes; leave it out.");
            return false;
        }

        if (camera.Lens is { HasFocalLengthMm: true })
        {
            return true;
        }

        context.Violations.Add(
            camera.Lens is null ? path.ToString() : path[Lens.FocalLengthMmFieldNumber].ToString(),
            RefusalReason.Required, "Give the focal length at this focus; only a far camera goes without.");
        return false;
    }

    private static LensFocus? ReadCloseness<TTrail>(
        this RequestContext context, ViewCamera camera, SensorRead sensor, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var f = trail.Given("f", camera.Lens.FocalLengthMm, "mm", "focal_length_mm");
        var p = trail.Given("p", OpticsReader.PupilOf(camera.Lens), "", "pupil_magnification");
        double m;
        if (camera.PlaceCase == ViewCamera.PlaceOneofCase.FieldWidthMm)
        {
            var F = trail.Given("F", camera.FieldWidthMm, "mm", "field_width_mm");
            m = Framing.MagnificationOf(sensor.WidthMm, F, ref trail);
        }
        else
        {
            m = ViewGeometry.MagnificationAt(f, p, camera.DistanceMm, ref trail);
        }

        if (m is > 0 and <= LargestMagnification)
        {
            return new(f, m, p, camera.Lens.PrincipalSeparationMm);
        }

        var isTooNear = camera.PlaceCase == ViewCamera.PlaceOneofCase.DistanceMm;
        context.Violations.Add(
            path[isTooNear ? ViewCamera.DistanceMmFieldNumber : ViewCamera.FieldWidthMmFieldNumber].ToString(), RefusalReason.OutOfRange,
            isTooNear
                ? "This lens focuses no nearer than a magnification of 20; move away or give a shorter focal length."
                : "With this sensor the magnification would be over 20.");
        return null;
    }
}

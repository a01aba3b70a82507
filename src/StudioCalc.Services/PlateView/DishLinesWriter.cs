using StudioCalc.Drawing;
using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>Writes the lines of a scene for a picture: as the camera sees them, and from above.</summary>
internal static class DishLinesWriter
{
    public static DishLines Write(ViewScene scene, ViewGeometry camera)
    {
        var (width, height) = (camera.FieldWidthMm / 2, camera.FieldHeightMm / 2);
        return new(
            Strokes(scene, camera),
            Strokes(scene, ViewGeometry.Above),
            camera.DistanceMm is null ? null : InPlan(camera.Eye),
            InPlan(camera.Aim),
            InPlan(camera.Towards),
            [Corner(-width, -height), Corner(width, -height), Corner(width, height), Corner(-width, height)]);

        (double X, double Y) Corner(double right, double up) => InPlan(camera.InPlane(right, up));
    }

    private static IReadOnlyList<DishStroke> Strokes(ViewScene scene, ViewGeometry camera) =>
        [.. ViewStrokes.Of(scene, camera).Select(stroke => new DishStroke(stroke.Thing, stroke.IsHidden, stroke.Places))];

    private static (double X, double Y) InPlan(Vector place) => (place.X, place.Y);
}

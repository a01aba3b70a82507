using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads elevations of a camera, counted from the table or from the vertical.</summary>
internal static class ElevationReader
{
    /// <summary>Reads an elevation as counted from the table; one from the vertical is converted, and the answer says so.</summary>
    public static double ReadElevation<TTrail>(
        this RequestContext context, double elevationDeg, ElevationOrigin origin, FieldPath path, ref TTrail trail, string answerField = "elevation_deg")
        where TTrail : struct, ITrail
    {
        trail.Section("elevation");
        if (origin != ElevationOrigin.Vertical)
        {
            return trail.Given("E", elevationDeg, "deg", "elevation, counted from the table", answerField);
        }

        var elevation = CameraElevation.FromVerticalDeg(elevationDeg, ref trail, answerField);
        context.Advisories.Add(Advise.ElevationConverted(path, elevationDeg, elevation));
        return elevation;
    }
}

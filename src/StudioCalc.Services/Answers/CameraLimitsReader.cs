using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads how far a camera can be set.</summary>
internal static class CameraLimitsReader
{
    /// <summary>Reads the limits; null after noting a bad field. Without a camera only the marks limit the aperture.</summary>
    public static CameraLimits? ReadLimits(this RequestContext context, Camera? camera, FieldPath path)
    {
        var open = new CameraLimits();
        if (camera is null)
        {
            return open;
        }

        var widest = Aperture(context, camera.WidestAperture, path[Camera.WidestApertureFieldNumber], open.WidestFNumber);
        var smallest = Aperture(context, camera.SmallestAperture, path[Camera.SmallestApertureFieldNumber], open.SmallestFNumber);
        var fastest = Speed(context, camera.FastestShutterSpeed, path[Camera.FastestShutterSpeedFieldNumber], open.FastestShutterSpeedS);
        var slowest = Speed(context, camera.SlowestShutterSpeed, path[Camera.SlowestShutterSpeedFieldNumber], open.SlowestShutterSpeedS);
        var sync = camera.SyncSpeed is null ? null : context.Read(camera.SyncSpeed, path[Camera.SyncSpeedFieldNumber]);
        var lowest = Iso(context, camera.LowestIso, path[Camera.LowestIsoFieldNumber], open.LowestIso);
        var highest = Iso(context, camera.HighestIso, path[Camera.HighestIsoFieldNumber], open.HighestIso);
        Ordered(context, widest, smallest, path[Camera.SmallestApertureFieldNumber], "Must not be wider than the widest aperture.");
        Ordered(context, fastest, slowest, path[Camera.SlowestShutterSpeedFieldNumber], "Must not be faster than the fastest shutter speed.");
        Ordered(context, lowest, highest, path[Camera.HighestIsoFieldNumber], "Must not be lower than the lowest ISO.");
        return widest is null || smallest is null || fastest is null || slowest is null || lowest is null || highest is null
            || (camera.SyncSpeed is not null && sync is null)
                ? null
                : new()
                {
                    WidestFNumber = widest.Value,
                    SmallestFNumber = smallest.Value,
                    FastestShutterSpeedS = fastest.Value,
                    SlowestShutterSpeedS = slowest.Value,
                    SyncSpeedS = sync,
                    LowestIso = lowest.Value,
                    HighestIso = highest.Value,
                };
    }

    private static double? Aperture(RequestContext context, Aperture? aperture, FieldPath path, double open) =>
        aperture is null ? open : context.Read(aperture, path);

    private static double? Speed(RequestContext context, ShutterSpeed? speed, FieldPath path, double open) =>
        speed is null ? open : context.Read(speed, path);

    private static double? Iso(RequestContext context, Iso? iso, FieldPath path, double open) =>
        iso is null ? open : context.Read(iso, path);

    private static void Ordered(RequestContext context, double? low, double? high, FieldPath path, string description)
    {
        if (low > high)
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict, description);
        }
    }
}

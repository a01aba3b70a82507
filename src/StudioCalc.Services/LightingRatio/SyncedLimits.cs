using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads the limits of a camera that is used with flash.</summary>
internal static class SyncedLimits
{
    /// <summary>Reads the limits; null after noting a bad field. The sync speed must be given.</summary>
    public static CameraLimits? ReadSyncedLimits(this RequestContext context, Camera camera, FieldPath path)
    {
        if (camera.SyncSpeed is null)
        {
            context.Violations.Add(path[Camera.SyncSpeedFieldNumber].ToString(), RefusalReason.Required,
                "Must be given: flash does not cover the frame at every shutter speed.");
        }

        var limits = context.ReadLimits(camera, path);
        Ordered(context, limits?.SyncSpeedS, limits?.SlowestShutterSpeedS, path[Camera.SlowestShutterSpeedFieldNumber],
            "Must not be faster than the sync speed.");
        Ordered(context, limits?.FastestShutterSpeedS, limits?.SyncSpeedS, path[Camera.FastestShutterSpeedFieldNumber],
            "Must not be slower than the sync speed.");
        return limits;
    }

    private static void Ordered(RequestContext context, double? faster, double? slower, FieldPath path, string description)
    {
        if (faster > slower)
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict, description);
        }
    }
}

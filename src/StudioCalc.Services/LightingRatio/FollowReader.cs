using Google.Protobuf.WellKnownTypes;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads a request to follow the back light, with the rules that hold between its fields.</summary>
internal static class FollowReader
{
    private static readonly FieldPath Root = FieldPath.Root(FollowBackLightRequest.Descriptor);

    /// <summary>The input and the readings, or null after noting every bad field.</summary>
    public static (FollowInput Input, TimedLight[] Readings)? Read<TTrail>(
        RequestContext context, FollowBackLightRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var readings = Readings(context, request, ref trail);
        var shutterSpeed = context.Read(request.ShutterSpeed, Root[FollowBackLightRequest.ShutterSpeedFieldNumber]);
        var limits = context.ReadSyncedLimits(request.Camera, Root[FollowBackLightRequest.CameraFieldNumber]);
        if (shutterSpeed is not { } held || limits is null || context.Violations.Any)
        {
            return null;
        }

        return (new()
        {
            First = readings[0].Level,
            Now = readings[^1].Level,
            ShutterSpeedS = held,
            Scale = context.Scale,
            SyncSpeedS = limits.SyncSpeedS!.Value,
            SlowestShutterSpeedS = limits.SlowestShutterSpeedS,
        }, readings);
    }

    private static TimedLight[] Readings<TTrail>(RequestContext context, FollowBackLightRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("readings");
        var list = Root[FollowBackLightRequest.ReadingsFieldNumber];
        var readings = new TimedLight[request.Readings.Count];
        ReadLight<Maths.LightLevel>? first = null;
        var differ = false;
        for (var i = 0; i < readings.Length; i++)
        {
            var (one, path) = (request.Readings[i], list.At(i));
            var light = context.Read(one.Reading, path[TimedReading.ReadingFieldNumber], ref trail);
            first ??= light;
            differ |= light is { } known && first is { } other && (known.Receptor != other.Receptor || known.Constant != other.Constant);
            readings[i] = new(Hours(one.Offset), light?.Level ?? default);
            if (i > 0 && readings[i].OffsetH <= readings[i - 1].OffsetH)
            {
                context.Violations.Add(path[TimedReading.OffsetFieldNumber].ToString(), RefusalReason.Conflict,
                    "Must be later than the reading before.");
            }
        }

        if (differ)
        {
            context.Advisories.Add(Advise.ReceptorsDiffer());
        }

        return readings;
    }

    // The checks take nanoseconds of any size, as they come in binary messages; conversion to a TimeSpan does not.
    private static double Hours(Duration time) => (time.Seconds + time.Nanos / 1e9) / 3600;
}

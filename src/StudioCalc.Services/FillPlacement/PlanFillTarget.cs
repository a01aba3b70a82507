using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads what a fill is to give at the receiver.</summary>
internal static class PlanFillTarget
{
    private const string AnswerField = "target_lx_s";

    /// <summary>Reads the target as an exposure in lx s; null after noting a bad field.</summary>
    public static double? Read<TTrail>(
        RequestContext context, PlanFillRequest request, LineReceiver? receiver, FieldPath root, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (request.Under is { } under)
        {
            return Under(context, under, receiver, root[PlanFillRequest.UnderFieldNumber], ref trail);
        }

        var path = root[PlanFillRequest.ReadingFieldNumber];
        return context.IsKind(request.Reading, isFlash: true, path) && context.ReadAt(request.Reading, receiver, path, ref trail) is { } read
            ? WantedLight.Amount(read.ValueIso100Stops, read.Constant, underStops: 0, timeS: 1, ref trail, AnswerField)
            : null;
    }

    private static double? Under<TTrail>(
        RequestContext context, UnderReading under, LineReceiver? receiver, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var readingPath = path[UnderReading.ReadingFieldNumber];
        var read = context.ReadAt(under.Reading, receiver, readingPath, ref trail);
        if (TimeS(context, under, path, readingPath) is not { } time || read is not { } other)
        {
            return null;
        }

        if (under.UnderStops <= 0)
        {
            context.Advisories.Add(Advise.FillNotUnder(path[UnderReading.UnderStopsFieldNumber].ToString(), under.UnderStops));
        }

        return WantedLight.Amount(other.ValueIso100Stops, other.Constant, under.UnderStops, time, ref trail, AnswerField);
    }

    // 1 for flash, which no shutter speed changes.
    private static double? TimeS(RequestContext context, UnderReading under, FieldPath path, FieldPath readingPath)
    {
        var at = path[UnderReading.ShutterSpeedFieldNumber];
        if (under.Reading.Flash is not null)
        {
            if (under.ShutterSpeed is null)
            {
                return 1;
            }

            context.Violations.Add(at.ToString(), RefusalReason.Conflict, "Flash does not depend on the shutter speed: leave it out.");
            return null;
        }

        if (under.ShutterSpeed is not null)
        {
            return context.Read(under.ShutterSpeed, at);
        }

        if (under.Reading.Continuous.Settings is { } settings)
        {
            var settingsPath = readingPath[Reading.ContinuousFieldNumber][ContinuousReading.SettingsFieldNumber];
            return context.Silent().Read(settings.ShutterSpeed, settingsPath[V1.CameraSettings.ShutterSpeedFieldNumber]);
        }

        context.Violations.Add(at.ToString(), RefusalReason.Required,
            "Must be given: light that stays on counts by the time that the shutter is open.");
        return null;
    }
}

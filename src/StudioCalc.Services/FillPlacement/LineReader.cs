using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads what calls that move a source have in common. What cannot be is noted, and the value is then null.</summary>
internal static class LineReader
{
    /// <summary>Reads the receiver; without one, a flat one at the aim point that faces the source.</summary>
    public static LineReceiver? ReadLineReceiver(
        this RequestContext context, LightReceiver? receiver, LightSource source, SourceRead? read, FieldPath path)
    {
        if (receiver is null)
        {
            return new(source.Pose.AimPoint.ToVector(), Normal: null, Collector.Flat);
        }

        return context.Read(receiver, [read], path) is { } at
            ? new(at.Place, receiver.FacingCase == LightReceiver.FacingOneofCase.SourceIndex ? null : at.Normal, at.Collector)
            : null;
    }

    /// <summary>Reads a range of distances.</summary>
    public static (double NearestMm, double FarthestMm)? Read(this RequestContext context, DistanceRange range, FieldPath path)
    {
        if (range.FarthestMm >= range.NearestMm)
        {
            return (range.NearestMm, range.FarthestMm);
        }

        context.Violations.Add(path[DistanceRange.FarthestMmFieldNumber].ToString(), RefusalReason.OutOfRange, "Must not be below the nearest.");
        return null;
    }

    /// <summary>Reads incident light that is held against the receiver's: with the same kind of receptor.</summary>
    public static IncidentRead? ReadAt<TTrail>(
        this RequestContext context, Reading reading, LineReceiver? receiver, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (context.ReadIncident(reading, path, ref trail) is not { } read || receiver is not { } at)
        {
            return null;
        }

        if (read.Collector == at.Collector)
        {
            return read;
        }

        var field = reading.Flash is not null
            ? path[Reading.FlashFieldNumber][FlashReading.ReceptorFieldNumber]
            : path[Reading.ContinuousFieldNumber][ContinuousReading.ReceptorFieldNumber];
        context.Violations.Add(field.ToString(), RefusalReason.Conflict, at.Collector == Collector.Dome
            ? "The receiver is a dome: give what a dome reads there."
            : "The receiver is flat: give what a flat receptor reads there, or make the receiver a dome.");
        return null;
    }

    /// <summary>Notes a reading of the other kind of light than the source's.</summary>
    public static bool IsKind(this RequestContext context, Reading reading, bool isFlash, FieldPath path)
    {
        if (reading.Flash is not null == isFlash)
        {
            return true;
        }

        context.Violations.Add(
            path[isFlash ? Reading.ContinuousFieldNumber : Reading.FlashFieldNumber].ToString(), RefusalReason.Conflict,
            isFlash ? "The source is flash: give a flash reading." : "The source stays on: give a continuous reading.");
        return false;
    }
}

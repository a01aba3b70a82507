using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads places that receive light. What cannot be is noted, and the place is then null.</summary>
internal static class ReceiverReader
{
    /// <summary>Reads every receiver of a list.</summary>
    public static IReadOnlyList<LightPoint?> ReadAll(
        this RequestContext context, IReadOnlyList<LightReceiver> receivers, IReadOnlyList<SourceRead?> sources, FieldPath path) =>
        [.. receivers.Select((receiver, i) => context.Read(receiver, sources, path.At(i)))];

    /// <summary>Reads a receiver; a source that it faces and that could not be read leaves it null without a further note.</summary>
    public static LightPoint? Read(
        this RequestContext context, LightReceiver receiver, IReadOnlyList<SourceRead?> sources, FieldPath path)
    {
        var place = receiver.Place.ToVector();
        var collector = receiver.Kind == ReceiverKind.Dome ? Collector.Dome : Collector.Flat;
        for (var i = 0; i < sources.Count; i++)
        {
            if (sources[i] is { Face.IsPoint: true } source && source.Face.Axes.Centre == place)
            {
                context.Violations.Add(path[LightReceiver.PlaceFieldNumber].ToString(), RefusalReason.Conflict,
                    FormattableString.Invariant($"Must not be where source {i} is, which is a point."));
                return null;
            }
        }

        switch (receiver.FacingCase)
        {
            case LightReceiver.FacingOneofCase.Up:
                return context.IsTrue(receiver.Up, path[LightReceiver.UpFieldNumber]) ? new(place, Vector.Up, collector) : null;
            case LightReceiver.FacingOneofCase.AimPoint:
                return context.Towards(place, receiver.AimPoint.ToVector(), collector, path[LightReceiver.AimPointFieldNumber]);
            default:
                var at = path[LightReceiver.SourceIndexFieldNumber];
                if (receiver.SourceIndex < sources.Count)
                {
                    return sources[(int)receiver.SourceIndex] is { } faced
                        ? context.Towards(place, faced.Face.Axes.Centre, collector, at)
                        : null;
                }

                context.Violations.Add(at.ToString(), RefusalReason.OutOfRange,
                    FormattableString.Invariant($"There is no such source; the last one has index {sources.Count - 1}."));
                return null;
        }
    }

    /// <summary>Notes a choice that is made by true and was given as false.</summary>
    public static bool IsTrue(this RequestContext context, bool value, FieldPath path)
    {
        if (!value)
        {
            context.Violations.Add(path.ToString(), RefusalReason.OutOfRange, "Must be true; choose another way of facing instead of false.");
        }

        return value;
    }

    private static LightPoint? Towards(this RequestContext context, Vector place, Vector aim, Collector collector, FieldPath path)
    {
        if (place != aim)
        {
            return new(place, (aim - place).Unit(), collector);
        }

        context.Violations.Add(path.ToString(), RefusalReason.Conflict, "The receiver cannot face the place where it is.");
        return null;
    }
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A flash that fills: its light, and where its head stands.</summary>
internal readonly record struct ReadFill(ReadLight<FlashLevel> Light, FlashHead Head);

/// <summary>Reads the flashes that fill.</summary>
internal static class FillReader
{
    private const double DefaultLowestPowerBelowFullStops = 7;

    /// <summary>The flash, or null after noting a bad field.</summary>
    public static ReadFill? Read<TTrail>(this RequestContext context, FlashFill fill, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var light = Light(context, fill.Reading, path[FlashFill.ReadingFieldNumber], ref trail);
        var head = Head(context, fill, path);
        return light is { } known && head is { } stands ? new(known, stands) : null;
    }

    private static ReadLight<FlashLevel>? Light<TTrail>(RequestContext context, Reading reading, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (reading.Flash is not { } flash)
        {
            context.Violations.Add(path[Reading.ContinuousFieldNumber].ToString(), RefusalReason.Conflict,
                "The fill is flash: give a flash reading.");
            return null;
        }

        if (flash.IncludesAmbient)
        {
            context.Violations.Add(path[Reading.FlashFieldNumber][FlashReading.IncludesAmbientFieldNumber].ToString(),
                RefusalReason.Conflict, "The flash must be read alone: shade the meter from the back light, or read at a faster shutter speed.");
        }

        return context.Read(flash, path[Reading.FlashFieldNumber], ref trail);
    }

    private static FlashHead? Head(RequestContext context, FlashFill fill, FieldPath path)
    {
        var power = context.Read(fill.Power, path[FlashFill.PowerFieldNumber]);
        var lowest = fill.LowestPower is null
            ? DefaultLowestPowerBelowFullStops
            : context.Read(fill.LowestPower, path[FlashFill.LowestPowerFieldNumber]);
        if (power > lowest)
        {
            context.Violations.Add(path[FlashFill.PowerFieldNumber].ToString(), RefusalReason.Conflict,
                "The head stands below its lowest power; state the lowest power of this head.");
        }

        return power is { } stands && lowest is { } end
            ? new(stands, end, fill.HasPowerScale ? fill.PowerScale.ToMaths() : Maths.StopScale.Tenth)
            : null;
    }
}

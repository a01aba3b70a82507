using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads a light of either kind that was metered alone.</summary>
internal static class MeteredReader
{
    /// <summary>The light, or null after noting a bad field.</summary>
    public static ReadLight<MeteredLight>? ReadAlone<TTrail>(this RequestContext context, Reading reading, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (reading.Continuous is { } continuous)
        {
            return context.Read(continuous, path[Reading.ContinuousFieldNumber], ref trail) is { } staysOn
                ? new(new MeteredLight(staysOn.Level), staysOn.Receptor, staysOn.Constant)
                : null;
        }

        var at = path[Reading.FlashFieldNumber];
        if (reading.Flash.IncludesAmbient)
        {
            context.Violations.Add(at[FlashReading.IncludesAmbientFieldNumber].ToString(), RefusalReason.Conflict,
                "Each light must be read alone: separate the flash from the daylight first.");
        }

        return context.Read(reading.Flash, at, ref trail) is { } flash
            ? new(new MeteredLight(flash.Level), flash.Receptor, flash.Constant)
            : null;
    }

    /// <summary>Notes once where two lights were read in different ways.</summary>
    public static void NoteReceptors(this RequestContext context, ReadOnlySpan<ReadLight<MeteredLight>> lights)
    {
        foreach (var light in lights)
        {
            if (light.Receptor != lights[0].Receptor || light.Constant != lights[0].Constant)
            {
                context.Advisories.Add(Advise.ReceptorsDiffer());
                return;
            }
        }
    }
}

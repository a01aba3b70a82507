using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads camera settings of a request as exact values. A bad mark is noted, and the value is then null.</summary>
internal static class CameraReader
{
    public static double? Read(this RequestContext context, Aperture aperture, FieldPath path)
    {
        if (aperture.ValueCase == Aperture.ValueOneofCase.FNumber)
        {
            return Refuse(context, aperture.HasScale, path[Aperture.ScaleFieldNumber])
                | Refuse(context, aperture.HasTenths, path[Aperture.TenthsFieldNumber])
                ? null
                : aperture.FNumber;
        }

        if (!aperture.HasTenths)
        {
            return ReadMark(
                context, Marks.Aperture, aperture.Mark, aperture.HasScale ? aperture.Scale : null, path[Aperture.MarkFieldNumber]);
        }

        if (aperture.HasScale && aperture.Scale is not (V1.StopScale.Whole or V1.StopScale.Tenth))
        {
            context.Violations.Add(
                path[Aperture.TenthsFieldNumber].ToString(), RefusalReason.Conflict, "Tenths count from a whole-stop mark: leave the scale out.");
            return null;
        }

        return Marks.Aperture.Find(aperture.Mark, (int)aperture.Tenths)?.Value
            ?? Unknown(context, Marks.Aperture, aperture.Mark, Maths.StopScale.Whole, path[Aperture.MarkFieldNumber]);
    }

    public static double? Read(this RequestContext context, ShutterSpeed speed, FieldPath path)
    {
        if (speed.ValueCase == ShutterSpeed.ValueOneofCase.TimeS)
        {
            return Refuse(context, speed.HasScale, path[ShutterSpeed.ScaleFieldNumber]) ? null : speed.TimeS;
        }

        return ReadMark(
            context, Marks.ShutterSpeed, speed.Mark, speed.HasScale ? speed.Scale : null, path[ShutterSpeed.MarkFieldNumber]);
    }

    public static double? Read(this RequestContext context, Iso iso, FieldPath path)
    {
        if (iso.ValueCase != Iso.ValueOneofCase.Mark && Refuse(context, iso.HasScale, path[Iso.ScaleFieldNumber]))
        {
            return null;
        }

        return iso.ValueCase switch
        {
            Iso.ValueOneofCase.Speed => iso.Speed,
            Iso.ValueOneofCase.LogarithmicSpeedDeg => IsoSpeeds.FromLogarithmic(iso.LogarithmicSpeedDeg),
            _ => ReadMark(context, Marks.Iso, iso.Mark, iso.HasScale ? iso.Scale : null, path[Iso.MarkFieldNumber]),
        };
    }

    public static Maths.CameraSettings? Read(this RequestContext context, V1.CameraSettings settings, FieldPath path)
    {
        var aperture = context.Read(settings.Aperture, path[V1.CameraSettings.ApertureFieldNumber]);
        var time = context.Read(settings.ShutterSpeed, path[V1.CameraSettings.ShutterSpeedFieldNumber]);
        var iso = context.Read(settings.Iso, path[V1.CameraSettings.IsoFieldNumber]);
        return aperture is { } n && time is { } t && iso is { } s ? new(n, t, s) : null;
    }

    /// <summary>Reads a flash head's power as stops below full.</summary>
    public static double? Read(this RequestContext context, FlashPower power, FieldPath path)
    {
        if (power.ValueCase == FlashPower.ValueOneofCase.BelowFullStops)
        {
            return Refuse(context, power.HasOffsetStops, path[FlashPower.OffsetStopsFieldNumber]) ? null : power.BelowFullStops;
        }

        if (FlashPowers.Find(power.Fraction) is not { } below)
        {
            context.Violations.Add(path[FlashPower.FractionFieldNumber].ToString(), RefusalReason.UnknownMark,
                "Must be one of 1/1, 1/2, 1/4 and so on to 1/1024.");
            return null;
        }

        if (below - power.OffsetStops is var stops && stops is >= 0 and <= FlashPowers.LowestBelowFullStops)
        {
            return stops;
        }

        context.Violations.Add(path[FlashPower.OffsetStopsFieldNumber].ToString(), RefusalReason.OutOfRange,
            "Fraction and offset together must lie between full power and 1/1024.");
        return null;
    }

    private static double? ReadMark(RequestContext context, MarkSeries marks, string text, V1.StopScale? own, FieldPath path)
    {
        var scale = own?.ToMaths() ?? context.Scale;
        if (marks.Find(text, scale) is not { } mark)
        {
            return Unknown(context, marks, text, scale, path);
        }

        if (own is null && context.ScaleIsAssumed && marks.IsAmbiguous(text))
        {
            context.Advisories.Add(Advise.AmbiguousMark(path, mark.Value));
        }

        return mark.Value;
    }

    private static double? Unknown(RequestContext context, MarkSeries marks, string text, Maths.StopScale scale, FieldPath path)
    {
        if (text.Contains(',', StringComparison.Ordinal))
        {
            context.Violations.Add(path.ToString(), RefusalReason.DecimalComma, "Write the mark with a point, not a comma.");
            return null;
        }

        var near = marks.Neighbours(text, scale);
        context.Violations.Add(path.ToString(), RefusalReason.UnknownMark,
            $"Not a mark on the {scale.ToString().ToLowerInvariant()}-stop scale"
            + (near.Count > 0 ? $"; the nearest are {string.Join(" and ", near)}" : "")
            + $". {Instead(marks, scale, text)}");
        return null;
    }

    private static string Instead(MarkSeries marks, Maths.StopScale scale, string text)
    {
        Maths.StopScale[] others = [Maths.StopScale.Third, Maths.StopScale.Half, Maths.StopScale.Whole];
        var other = Array.Find(others, candidate => candidate != scale && marks.Find(text, candidate) is not null);
        return marks.Find(text, other) is not null ? $"It is one in {other.ToString().ToLowerInvariant()} stops: state that scale beside it."
            : marks == Marks.Aperture ? "An f-number that is no mark goes into f_number."
            : marks == Marks.ShutterSpeed ? "Fractions of a second are written 1/n; a time that is no mark goes into time_s, in seconds."
            : "A speed that is no mark goes into speed.";
    }

    private static bool Refuse(RequestContext context, bool isSet, FieldPath path)
    {
        if (isSet)
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict, "Belongs to a mark; leave it out with a number.");
        }

        return isSet;
    }
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A source of a request: its face, and how bright it is where that is told.</summary>
internal sealed record SourceRead(string Name, LightFace Face, SourceLevel? Level);

/// <summary>Reads light sources. What cannot be is noted, and the source is then null.</summary>
internal static class SourceReader
{
    /// <summary>Reads every source of a list; where there are several, each needs a calibration.</summary>
    public static IReadOnlyList<SourceRead?> ReadAll<TTrail>(
        this RequestContext context, IReadOnlyList<LightSource> sources, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var read = new SourceRead?[sources.Count];
        for (var i = 0; i < read.Length; i++)
        {
            var at = path.At(i);
            trail.Section(sources[i].HasName ? sources[i].Name : FormattableString.Invariant($"source {i}"));
            read[i] = context.Read(sources[i], at, ref trail);
            if (read.Length > 1 && sources[i].Calibration is null)
            {
                context.Violations.Add(at[LightSource.CalibrationFieldNumber].ToString(), RefusalReason.Required,
                    "Where there are several sources, each needs a reading or a luminance: otherwise they cannot be added.");
            }
        }

        return read;
    }

    /// <summary>Reads a source, with its brightness at its power as used.</summary>
    public static SourceRead? Read<TTrail>(this RequestContext context, LightSource source, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (source.HotCentre is not null && source.ShapeCase == LightSource.ShapeOneofCase.Point)
        {
            context.Violations.Add(path[LightSource.HotCentreFieldNumber].ToString(), RefusalReason.Conflict,
                "A point has no middle that could be brighter: leave it out, or give the face its size.");
            return null;
        }

        if (context.Read(source.Pose, path[LightSource.PoseFieldNumber]) is not { } axes
            || context.ReadFace(source, axes, path) is not { } face)
        {
            return null;
        }

        var name = source.HasName ? source.Name : "";
        if (source.Calibration is null)
        {
            if (source.Power is null)
            {
                return new(name, face, Level: null);
            }

            context.Violations.Add(path[LightSource.PowerFieldNumber].ToString(), RefusalReason.Conflict,
                "A power needs a calibration by a reading at a known power.");
            return null;
        }

        return context.ReadLevel(source, face, path, ref trail) is { } level ? new(name, face, level) : null;
    }

    /// <summary>Reads where a thing stands.</summary>
    public static FaceAxes? Read(this RequestContext context, Pose pose, FieldPath path)
    {
        var (position, aim) = (pose.Position.ToVector(), pose.AimPoint.ToVector());
        if (position != aim)
        {
            return new(position, aim, pose.RollDeg);
        }

        context.Violations.Add(path[Pose.AimPointFieldNumber].ToString(), RefusalReason.Conflict, "Must differ from the position.");
        return null;
    }

    /// <summary>A point as a place.</summary>
    public static Vector ToVector(this Point point) => new(point.XMm, point.YMm, point.ZMm);

    /// <summary>Reads the face of a source, without its brightness.</summary>
    public static LightFace? ReadFace(this RequestContext context, LightSource source, FaceAxes axes, FieldPath path)
    {
        switch (source.ShapeCase)
        {
            case LightSource.ShapeOneofCase.Point:
                return LightFace.Point(axes);
            case LightSource.ShapeOneofCase.Disc:
                return Face(FaceOutline.Disc(source.Disc.DiameterMm));
            case LightSource.ShapeOneofCase.Rectangle:
                return Face(FaceOutline.Rectangle(source.Rectangle.WidthMm, source.Rectangle.HeightMm));
            case LightSource.ShapeOneofCase.Polygon:
                return Face(FaceOutline.Polygon((int)source.Polygon.Sides, source.Polygon.AcrossFlatsMm));
            default:
                (double Right, double Up)[] corners = [.. source.Outline.Corners.Select(corner => (corner.RightMm, corner.UpMm))];
                if (FaceOutline.IsSimple(corners))
                {
                    return Face(FaceOutline.CounterClockwise(corners));
                }

                context.Violations.Add(
                    path[LightSource.OutlineFieldNumber][OutlineSource.CornersFieldNumber].ToString(), RefusalReason.Conflict,
                    "The outline must not cross or touch itself, and must have an area.");
                return null;
        }

        LightFace Face((double Right, double Up)[] outline) => source.HotCentre is { } hot
            ? LightFace.Of(axes, outline, hot.WidthShare, hot.LuminanceRatio)
            : LightFace.Of(axes, outline);
    }

    private static SourceLevel? ReadLevel<TTrail>(
        this RequestContext context, LightSource source, LightFace face, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var at = path[LightSource.CalibrationFieldNumber];
        if (source.Calibration.Reading is { } reading)
        {
            var readingPath = at[SourceCalibration.ReadingFieldNumber];
            var level = context.ReadLevel(reading, face, readingPath, ref trail);
            var change = context.ReadPowerChange(source, reading, path, readingPath);
            return level is { } known && change is { } stops ? known.Brighter(stops) : null;
        }

        var bad = false;
        if (face.IsPoint)
        {
            context.Violations.Add(at[SourceCalibration.LuminanceCdPerM2FieldNumber].ToString(), RefusalReason.Conflict,
                "A point has no luminance: give a reading.");
            bad = true;
        }

        if (source.Power is not null)
        {
            context.Violations.Add(path[LightSource.PowerFieldNumber].ToString(), RefusalReason.Conflict,
                "A power needs a calibration by a reading at a known power.");
            bad = true;
        }

        return bad ? null : SourceLevel.OfLuminance(source.Calibration.LuminanceCdPerM2);
    }

    private static SourceLevel? ReadLevel<TTrail>(
        this RequestContext context, CalibrationReading reading, LightFace face, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var value = context.ReadIncident(reading.Reading, path[CalibrationReading.ReadingFieldNumber], ref trail);
        var place = reading.Place.ToVector();
        var aim = reading.AimPoint?.ToVector() ?? face.Axes.Centre;
        if (place == aim)
        {
            context.Violations.Add(
                path[reading.AimPoint is null ? CalibrationReading.PlaceFieldNumber : CalibrationReading.AimPointFieldNumber].ToString(),
                RefusalReason.Conflict,
                reading.AimPoint is null ? "The meter must stand before the source, not in it." : "Must differ from the place.");
            return null;
        }

        if (value is not { } read)
        {
            return null;
        }

        var light = face.Light(new LightPoint(place, (aim - place).Unit(), read.Collector), ref trail);
        if (light > 0)
        {
            return SourceLevel.OfReading(read.IsFlash, read.ValueIso100Stops, read.Constant, read.Collector, light, ref trail);
        }

        context.Violations.Add(path[CalibrationReading.PlaceFieldNumber].ToString(), RefusalReason.Conflict,
            "None of this source's light reaches the meter there, as it stands and faces.");
        return null;
    }

    /// <summary>Reads an incident reading of one light alone; null after noting a bad field.</summary>
    public static IncidentRead? ReadIncident<TTrail>(this RequestContext context, Reading reading, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (reading.Flash is { } flash)
        {
            var at = path[Reading.FlashFieldNumber];
            if (flash.IncludesAmbient)
            {
                context.Violations.Add(at[FlashReading.IncludesAmbientFieldNumber].ToString(), RefusalReason.Conflict,
                    "The flash must be read alone: shade the meter from other light.");
                return null;
            }

            return context.Read(flash, at, ref trail) is { } light
                ? context.Incident(isFlash: true, light.Level.FlashValueIso100Stops, light.Receptor, light.Constant, at[FlashReading.ReceptorFieldNumber])
                : null;
        }

        var steadyPath = path[Reading.ContinuousFieldNumber];
        var receptor = steadyPath[reading.Continuous.ValueCase == ContinuousReading.ValueOneofCase.LuminanceCdPerM2
            ? ContinuousReading.LuminanceCdPerM2FieldNumber
            : ContinuousReading.ReceptorFieldNumber];
        return context.Read(reading.Continuous, steadyPath, ref trail) is { } steady
            ? context.Incident(isFlash: false, steady.Level.ExposureValueIso100Stops, steady.Receptor, steady.Constant, receptor)
            : null;
    }

    private static IncidentRead? Incident(
        this RequestContext context, bool isFlash, double valueStops, Maths.Receptor receptor, double constant, FieldPath path)
    {
        if (receptor != Maths.Receptor.Reflected)
        {
            return new(isFlash, valueStops, receptor == Maths.Receptor.Flat ? Collector.Flat : Collector.Dome, constant);
        }

        context.Violations.Add(path.ToString(), RefusalReason.Conflict,
            "Reflected light tells of the surface, not of what reaches it: read incident light, with a flat or dome receptor.");
        return null;
    }

    private static double? ReadPowerChange(
        this RequestContext context, LightSource source, CalibrationReading reading, FieldPath path, FieldPath readingPath)
    {
        var isFlash = reading.Reading.Flash is not null;
        var readPath = readingPath[CalibrationReading.PowerFieldNumber];
        if (!isFlash && (reading.Power is not null || source.Power is not null))
        {
            context.Violations.Add((reading.Power is null ? path[LightSource.PowerFieldNumber] : readPath).ToString(), RefusalReason.Conflict,
                "Light that stays on has no flash power: leave it out, or give a flash reading.");
            return null;
        }

        if (reading.Power is null && source.Power is not null)
        {
            context.Violations.Add(readPath.ToString(), RefusalReason.Required,
                "The power as used needs the power at which the source was read.");
            return null;
        }

        var read = reading.Power is null ? 0 : context.Read(reading.Power, readPath);
        var used = source.Power is null ? read : context.Read(source.Power, path[LightSource.PowerFieldNumber]);
        return read - used;
    }
}

/// <summary>An incident reading of one light.</summary>
internal readonly record struct IncidentRead(bool IsFlash, double ValueIso100Stops, Collector Collector, double Constant);

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads lens, closeness, sensor and aperture. What cannot be is noted, and the value is then null.</summary>
internal static class OpticsReader
{
    private const double WorthSaying = 0.02;

    // Of the narrowest sensor and the widest field that the contract knows; below it distances grow out of all numbers.
    private const double LeastMagnification = 1e-6;

    /// <summary>Reads a focused lens with the sensor behind it.</summary>
    public static OpticsRead? Read<TTrail>(this RequestContext context, FocusedCamera camera, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var sensorPath = path[FocusedCamera.SensorFieldNumber];
        var sensor = context.ReadSensor(camera.Sensor, sensorPath);
        if (camera.Sensor is not null && sensor is null)
        {
            return null;
        }

        var lens = context.ReadLens(camera, sensor, path, ref trail);
        if (lens is { IsAtInfinity: false, FromSensorMm: <= 0 })
        {
            context.Violations.Add(
                path[FocusedCamera.LensFieldNumber][Lens.PrincipalSeparationMmFieldNumber].ToString(), RefusalReason.OutOfRange,
                "With this separation the focused plane would lie behind the sensor.");
            return null;
        }

        return lens is null ? null : new(lens, sensor);
    }

    /// <summary>Reads a sensor as it is held; null without one, or after noting a bad field.</summary>
    public static SensorRead? ReadSensor(this RequestContext context, Sensor? sensor, FieldPath path)
    {
        if (sensor is null)
        {
            return null;
        }

        double width, height;
        if (sensor.FrameCase == Sensor.FrameOneofCase.Size)
        {
            (width, height) = (sensor.Size.WidthMm, sensor.Size.HeightMm);
        }
        else if (SensorFormats.Find(sensor.Format) is { } format)
        {
            (width, height) = (format.WidthMm, format.HeightMm);
        }
        else
        {
            context.Violations.Add(path[Sensor.FormatFieldNumber].ToString(), RefusalReason.UnknownMark,
                $"Not a listed format; there are {string.Join(", ", SensorFormats.All.Select(known => known.Name))}. "
                + "Any other goes into size.");
            return null;
        }

        var (longSide, shortSide) = (Math.Max(width, height), Math.Min(width, height));
        return sensor.Upright
            ? new(shortSide, longSide, sensor.HasLongSidePixels ? sensor.LongSidePixels : null)
            : new(longSide, shortSide, sensor.HasLongSidePixels ? sensor.LongSidePixels : null);
    }

    /// <summary>Reads how close a lens of fixed focal length is focused.</summary>
    public static LensFocus? ReadFocus<TTrail>(
        this RequestContext context,
        Lens lens,
        Closeness closeness,
        SensorRead? sensor,
        FieldPath lensPath,
        FieldPath closenessPath,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("closeness");
        if (closeness.ValueCase == Closeness.ValueOneofCase.SensorDistanceMm)
        {
            return context.AtSensorDistance(lens, closeness.SensorDistanceMm, lensPath, closenessPath, ref trail);
        }

        if (context.ReadMagnification(closeness, sensor, closenessPath, ref trail) is not { } m)
        {
            return null;
        }

        if (lens.HasFocalLengthMm)
        {
            return new(lens.FocalLengthMm, m, PupilOf(lens), lens.PrincipalSeparationMm);
        }

        context.Violations.Add(lensPath[Lens.FocalLengthMmFieldNumber].ToString(), RefusalReason.Required,
            "Give the focal length, or, in calls that take it, the sensor distance beside the magnification or field width.");
        return null;
    }

    /// <summary>Refuses focus at infinity, which only a magnification of 0 tells; returns whether it did.</summary>
    public static bool RefuseInfinity(this RequestContext context, LensFocus? lens, FieldPath closenessPath)
    {
        if (lens is not { IsAtInfinity: true })
        {
            return false;
        }

        context.Violations.Add(closenessPath[Closeness.MagnificationFieldNumber].ToString(), RefusalReason.OutOfRange,
            "Focus at infinity has no focused plane to count from; give a magnification above 0.");
        return true;
    }

    /// <summary>The pupil magnification of a lens; unset means a symmetrical one.</summary>
    public static double PupilOf(Lens lens) => lens.HasPupilMagnification ? lens.PupilMagnification : 1;

    /// <summary>Reads an aperture as the set f-number; its step names the answer field that equals it, if any does.</summary>
    public static double? ReadSetFNumber<TTrail>(
        this RequestContext context,
        LensAperture aperture,
        LensFocus? lens,
        FieldPath path,
        ref TTrail trail,
        string setField = "aperture.f_number")
        where TTrail : struct, ITrail
    {
        trail.Section("aperture");
        if (aperture.ValueCase == LensAperture.ValueOneofCase.Set)
        {
            return context.Read(aperture.Set, path[LensAperture.SetFieldNumber]) is { } set
                ? trail.Given("N", set, "", "set aperture", setField)
                : null;
        }

        if (context.Read(aperture.Effective, path[LensAperture.EffectiveFieldNumber]) is not { } effective || lens is null)
        {
            return null;
        }

        var Ne = trail.Given("Ne", effective, "", "effective aperture");
        var m = trail.Given("m", lens.Magnification, "", "magnification");
        var p = trail.Given("p", lens.PupilMagnification, "", "pupil_magnification");
        return trail.Let("N", Ne / (1 + m / p), "", "depth of field (6)", setField);
    }

    private static LensFocus? ReadLens<TTrail>(
        this RequestContext context, FocusedCamera camera, SensorRead? sensor, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("closeness");
        var lens = camera.Lens;
        var distancePath = path[FocusedCamera.SensorDistanceMmFieldNumber];
        var closenessPath = path[FocusedCamera.ClosenessFieldNumber];
        if (camera.HasSensorDistanceMm && camera.Closeness.ValueCase == Closeness.ValueOneofCase.SensorDistanceMm)
        {
            context.Violations.Add(distancePath.ToString(), RefusalReason.Conflict,
                "Goes with a magnification or a field width; the closeness tells a sensor distance already.");
            return null;
        }

        if (!camera.HasSensorDistanceMm)
        {
            return context.ReadFocus(lens, camera.Closeness, sensor, path[FocusedCamera.LensFieldNumber], closenessPath, ref trail);
        }

        if (context.ReadMagnification(camera.Closeness, sensor, closenessPath, ref trail) is not { } m)
        {
            return null;
        }

        if (m == 0 || camera.SensorDistanceMm <= lens.PrincipalSeparationMm)
        {
            context.Violations.Add(distancePath.ToString(), RefusalReason.Conflict, m == 0
                ? "Focus at infinity has no sensor distance; leave it out and give the focal length."
                : "Must be greater than the separation of the principal planes.");
            return null;
        }

        var f = LensFocus.FocalLengthAt(camera.SensorDistanceMm, m, lens.PrincipalSeparationMm, ref trail);
        if (lens.HasFocalLengthMm && Math.Abs(f / lens.FocalLengthMm - 1) > WorthSaying)
        {
            context.Advisories.Add(Advise.FocalLengthDiffers(
                path[FocusedCamera.LensFieldNumber][Lens.FocalLengthMmFieldNumber], lens.FocalLengthMm, f));
        }

        return new(f, m, PupilOf(lens), lens.PrincipalSeparationMm);
    }

    private static LensFocus? AtSensorDistance<TTrail>(
        this RequestContext context, Lens lens, double distanceMm, FieldPath lensPath, FieldPath closenessPath, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (!lens.HasFocalLengthMm)
        {
            context.Violations.Add(lensPath[Lens.FocalLengthMmFieldNumber].ToString(),
                RefusalReason.Required, "A sensor distance alone needs the focal length; better give the magnification or field width.");
            return null;
        }

        if (LensFocus.MagnificationAt(distanceMm, lens.FocalLengthMm, lens.PrincipalSeparationMm, ref trail) is { } m)
        {
            return new(lens.FocalLengthMm, m, PupilOf(lens), lens.PrincipalSeparationMm);
        }

        var nearest = LensFocus.NearestInFocalLengths * lens.FocalLengthMm + lens.PrincipalSeparationMm;
        context.Violations.Add(
            closenessPath[Closeness.SensorDistanceMmFieldNumber].ToString(), RefusalReason.OutOfRange,
            FormattableString.Invariant($"No lens of this fixed focal length focuses nearer than {nearest:0.#} mm from the sensor. ")
            + "A lens that focuses inside has shortened its focal length: give the magnification or the field width, and the "
            + "sensor distance beside it.");
        return null;
    }

    private static double? ReadMagnification<TTrail>(
        this RequestContext context, Closeness closeness, SensorRead? sensor, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (closeness.ValueCase == Closeness.ValueOneofCase.Magnification)
        {
            if (closeness.Magnification is > 0 and < LeastMagnification)
            {
                context.Violations.Add(path[Closeness.MagnificationFieldNumber].ToString(), RefusalReason.OutOfRange,
                    "Must be 0, focus at infinity, or at least 0.000001.");
                return null;
            }

            return trail.Given("m", closeness.Magnification, "", "magnification");
        }

        if (sensor is null)
        {
            context.Violations.Add(path[Closeness.FieldWidthMmFieldNumber].ToString(), RefusalReason.Conflict,
                "Needs the size of the sensor; give it, or the magnification.");
            return null;
        }

        var field = trail.Given("F", closeness.FieldWidthMm, "mm", "field_width_mm");
        var m = Framing.MagnificationOf(sensor.WidthMm, field, ref trail);
        if (m <= 20)
        {
            return m;
        }

        context.Violations.Add(path[Closeness.FieldWidthMmFieldNumber].ToString(), RefusalReason.OutOfRange,
            "With this sensor the magnification would be over 20.");
        return null;
    }
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads lens, closeness, sensor, aperture and permitted blur. What cannot be is noted, and the value is then null.</summary>
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

    /// <summary>Reads the blur that passes as sharp. [mm]</summary>
    public static double? ReadBlurMm<TTrail>(
        this RequestContext context, V1.PermittedBlur blur, SensorRead? sensor, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("permitted blur");
        switch (blur.CriterionCase)
        {
            case V1.PermittedBlur.CriterionOneofCase.DiameterUm:
                return trail.Given("c", blur.DiameterUm / 1000, "mm", "diameter_um over 1000");
            case V1.PermittedBlur.CriterionOneofCase.Named when sensor is not null:
                return Maths.PermittedBlur.ByDiagonalMm(sensor.WidthMm, sensor.HeightMm, Divisor(blur.Named), ref trail);
            case V1.PermittedBlur.CriterionOneofCase.Print when sensor is not null:
                var print = new Maths.PrintViewing(
                    blur.Print.WidthMm, blur.Print.HeightMm, blur.Print.ViewingDistanceMm, blur.Print.ResolvedPerMm);
                return Maths.PermittedBlur.ByPrintMm(sensor.WidthMm, sensor.HeightMm, print, ref trail);
            case V1.PermittedBlur.CriterionOneofCase.Pixels when sensor is { LongSidePixels: { } pixels }:
                return Maths.PermittedBlur.ByPixelsMm(sensor.LongSideMm, pixels, blur.Pixels, ref trail);
            case V1.PermittedBlur.CriterionOneofCase.Pixels:
                context.Violations.Add(path[V1.PermittedBlur.PixelsFieldNumber].ToString(), RefusalReason.Conflict,
                    "Needs the sensor with its size and pixels; give them, or a diameter.");
                return null;
            default:
                var number = blur.CriterionCase == V1.PermittedBlur.CriterionOneofCase.Named
                    ? V1.PermittedBlur.NamedFieldNumber
                    : V1.PermittedBlur.PrintFieldNumber;
                context.Violations.Add(path[number].ToString(), RefusalReason.Conflict,
                    "Needs the size of the sensor; give it, or a diameter.");
                return null;
        }
    }

    /// <summary>Reads an aperture as the set f-number. The working names the answer's aperture, unless the answer holds it
    /// elsewhere.</summary>
    public static double? ReadSetFNumber<TTrail>(
        this RequestContext context, LensAperture aperture, LensFocus? lens, FieldPath path, ref TTrail trail, bool isAnswered = true)
        where TTrail : struct, ITrail
    {
        trail.Section("aperture");
        if (aperture.ValueCase == LensAperture.ValueOneofCase.Set)
        {
            return context.Read(aperture.Set, path[LensAperture.SetFieldNumber]) is { } set
                ? trail.Given("N", set, "", "set aperture", isAnswered ? "aperture.f_number" : "")
                : null;
        }

        if (context.Read(aperture.Effective, path[LensAperture.EffectiveFieldNumber]) is not { } effective || lens is null)
        {
            return null;
        }

        var Ne = trail.Given("Ne", effective, "", "effective aperture", isAnswered ? "effective_f_number" : "");
        var m = trail.Given("m", lens.Magnification, "", "magnification");
        var p = trail.Given("p", lens.PupilMagnification, "", "pupil_magnification");
        return trail.Let("N", Ne / (1 + m / p), "", "depth of field (6)", isAnswered ? "aperture.f_number" : "");
    }

    private static LensFocus? ReadLens<TTrail>(
        this RequestContext context, FocusedCamera camera, SensorRead? sensor, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("closeness");
        var lens = camera.Lens;
        var pupil = lens.HasPupilMagnification ? lens.PupilMagnification : 1;
        var distancePath = path[FocusedCamera.SensorDistanceMmFieldNumber];
        if (camera.Closeness.ValueCase == Closeness.ValueOneofCase.SensorDistanceMm)
        {
            if (camera.HasSensorDistanceMm)
            {
                context.Violations.Add(distancePath.ToString(), RefusalReason.Conflict,
                    "Goes with a magnification or a field width; the closeness tells a sensor distance already.");
                return null;
            }

            return context.AtSensorDistance(lens, camera.Closeness.SensorDistanceMm, pupil, path, ref trail);
        }

        if (context.ReadMagnification(camera.Closeness, sensor, path[FocusedCamera.ClosenessFieldNumber], ref trail) is not { } m)
        {
            return null;
        }

        if (!camera.HasSensorDistanceMm)
        {
            if (lens.HasFocalLengthMm)
            {
                return new(lens.FocalLengthMm, m, pupil, lens.PrincipalSeparationMm);
            }

            context.Violations.Add(path[FocusedCamera.LensFieldNumber][Lens.FocalLengthMmFieldNumber].ToString(),
                RefusalReason.Required, "Give the focal length, or the sensor distance beside the magnification or field width.");
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

        return new(f, m, pupil, lens.PrincipalSeparationMm);
    }

    private static LensFocus? AtSensorDistance<TTrail>(
        this RequestContext context, Lens lens, double distanceMm, double pupil, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (!lens.HasFocalLengthMm)
        {
            context.Violations.Add(path[FocusedCamera.LensFieldNumber][Lens.FocalLengthMmFieldNumber].ToString(),
                RefusalReason.Required, "A sensor distance alone needs the focal length; better give the magnification or field width.");
            return null;
        }

        if (LensFocus.MagnificationAt(distanceMm, lens.FocalLengthMm, lens.PrincipalSeparationMm, ref trail) is { } m)
        {
            return new(lens.FocalLengthMm, m, pupil, lens.PrincipalSeparationMm);
        }

        var nearest = LensFocus.NearestInFocalLengths * lens.FocalLengthMm + lens.PrincipalSeparationMm;
        context.Violations.Add(
            path[FocusedCamera.ClosenessFieldNumber][Closeness.SensorDistanceMmFieldNumber].ToString(), RefusalReason.OutOfRange,
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

    private static double Divisor(BlurCriterion criterion) => criterion switch
    {
        BlurCriterion.Diagonal1000 => 1000,
        BlurCriterion.Diagonal1442 => 1442,
        BlurCriterion.Diagonal1500 => 1500,
        BlurCriterion.Diagonal1730 => 1730,
        _ => throw new ArgumentOutOfRangeException(nameof(criterion)),
    };
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A reading of a request as a level, with what it was read with.</summary>
internal readonly record struct ReadLight<TLevel>(TLevel Level, Maths.Receptor Receptor, double Constant);

/// <summary>Reads light readings of a request as levels. A bad field is noted, and the level is then null.</summary>
internal static class LightReader
{
    public static ReadLight<Maths.LightLevel>? Read<TTrail>(
        this RequestContext context, ContinuousReading reading, FieldPath path, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var isLuminance = reading.ValueCase == ContinuousReading.ValueOneofCase.LuminanceCdPerM2;
        var receptor = reading.HasReceptor ? reading.Receptor.ToMaths()
            : isLuminance ? Maths.Receptor.Reflected
            : Maths.Receptor.Flat;
        var constant = reading.HasCalibrationConstant ? reading.CalibrationConstant : receptor.Default();
        Calibration(context, receptor, constant, path[ContinuousReading.CalibrationConstantFieldNumber]);
        var isReflected = receptor == Maths.Receptor.Reflected;
        if (isLuminance != isReflected
            && reading.ValueCase is ContinuousReading.ValueOneofCase.LuminanceCdPerM2 or ContinuousReading.ValueOneofCase.IlluminanceLx)
        {
            context.Violations.Add(path[ContinuousReading.ReceptorFieldNumber].ToString(), RefusalReason.Conflict, isLuminance
                ? "A luminance is read with a reflected-light receptor."
                : "An illuminance is read with a flat or dome receptor.");
            return null;
        }

        Maths.LightLevel? level = reading.ValueCase switch
        {
            ContinuousReading.ValueOneofCase.Settings =>
                context.Read(reading.Settings, path[ContinuousReading.SettingsFieldNumber]) is { } settings
                    ? Maths.LightLevel.FromSettings(settings, ref trail, answerField)
                    : null,
            ContinuousReading.ValueOneofCase.IlluminanceLx =>
                Maths.LightLevel.FromIlluminance(reading.IlluminanceLx, constant, ref trail, answerField),
            ContinuousReading.ValueOneofCase.LuminanceCdPerM2 =>
                Maths.LightLevel.FromLuminance(reading.LuminanceCdPerM2, constant, ref trail, answerField),
            _ => new(trail.Given(
                "E", reading.ExposureValueIso100Stops, "stops", "exposure_value_iso100_stops", answerField)),
        };
        return level is { } known ? new(known, receptor, constant) : null;
    }

    public static ReadLight<FlashLevel>? Read<TTrail>(
        this RequestContext context, FlashReading reading, FieldPath path, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var receptor = reading.HasReceptor ? reading.Receptor.ToMaths() : Maths.Receptor.Flat;
        var constant = reading.HasCalibrationConstant ? reading.CalibrationConstant : receptor.Default();
        Calibration(context, receptor, constant, path[FlashReading.CalibrationConstantFieldNumber]);
        if (reading.ValueCase == FlashReading.ValueOneofCase.ExposureLxS)
        {
            if (receptor != Maths.Receptor.Reflected)
            {
                return new(FlashLevel.FromExposure(reading.ExposureLxS, constant, ref trail, answerField), receptor, constant);
            }

            context.Violations.Add(
                path[FlashReading.ReceptorFieldNumber].ToString(), RefusalReason.Conflict, "An exposure in lx s is read with a flat or dome receptor.");
            return null;
        }

        var at = path[FlashReading.SettingsFieldNumber];
        var aperture = context.Read(reading.Settings.Aperture, at[FlashSettings.ApertureFieldNumber]);
        var iso = context.Read(reading.Settings.Iso, at[FlashSettings.IsoFieldNumber]);
        return aperture is { } n && iso is { } s
            ? new(FlashLevel.FromSettings(n, s, ref trail, answerField), receptor, constant)
            : null;
    }

    private static void Calibration(RequestContext context, Maths.Receptor receptor, double constant, FieldPath path)
    {
        if (!receptor.IsRecommended(constant))
        {
            context.Advisories.Add(Advise.UnusualCalibration(path, constant));
        }
    }
}

using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>Advisories that several calls give about blur.</summary>
internal static class OpticsNotes
{
    /// <summary>Speaks up where diffraction makes more than half of the permitted blur.</summary>
    public static void NoteDiffraction(this RequestContext context, double airyDiscUm, double blurMm, string field = "aperture")
    {
        var permittedUm = blurMm * 1000;
        if (airyDiscUm > permittedUm / 2)
        {
            context.Advisories.Add(airyDiscUm >= permittedUm
                ? Advise.DiffractionSpoils(airyDiscUm, permittedUm, field)
                : Advise.DiffractionCounts(airyDiscUm, permittedUm, field));
        }
    }

    /// <summary>Speaks up where diffraction makes more than half of the permitted blur, at a set f-number.</summary>
    public static void NoteDiffraction(
        this RequestContext context, LensFocus lens, double fNumber, double blurMm, double wavelengthUm, string field)
    {
        var none = default(NoTrail);
        context.NoteDiffraction(Diffraction.AiryDiscUm(fNumber * lens.EffectiveFactor, wavelengthUm, ref none), blurMm, field);
    }

    /// <summary>Speaks up where the permitted blur is smaller than a pixel.</summary>
    public static void NoteFineBlur(this RequestContext context, double blurMm, SensorRead? sensor, FieldPath path)
    {
        if (sensor is { LongSidePixels: { } pixels } && blurMm * pixels < sensor.LongSideMm)
        {
            context.Advisories.Add(Advise.BlurBelowPixel(path, blurMm * 1000, sensor.LongSideMm / pixels * 1000));
        }
    }
}

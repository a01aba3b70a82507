using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>Notes what diffraction does to a zone that counts defocus alone.</summary>
internal static class DiffractionNotes
{
    private const double WorthSaying = 0.5;

    /// <summary>Notes it where it makes more than half of the permitted blur.</summary>
    public static void NoteDiffraction(
        this RequestContext context, LensFocus lens, double fNumber, double blurMm, double wavelengthUm, string field)
    {
        var none = default(NoTrail);
        var airyDiscUm = Diffraction.AiryDiscUm(fNumber * lens.EffectiveFactor, wavelengthUm, ref none);
        if (Diffraction.LeftForDefocus(blurMm, airyDiscUm / 1000) is null)
        {
            context.Advisories.Add(Advise.DiffractionSpoils(airyDiscUm, blurMm * 1000, field));
        }
        else if (airyDiscUm > blurMm * 1000 * WorthSaying)
        {
            context.Advisories.Add(Advise.DiffractionCounts(airyDiscUm, blurMm * 1000, field));
        }
    }
}

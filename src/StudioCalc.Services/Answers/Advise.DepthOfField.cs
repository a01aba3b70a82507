using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Depth of field, focus and framing.</content>
internal static partial class Advise
{
    public static Advisory FocalLengthDiffers(FieldPath field, double markedMm, double atFocusMm) => Make(
        AdvisoryCode.FocalLengthDiffers,
        AdvisorySeverity.Note,
        "Magnification and sensor distance make another focal length than the given one; lenses that focus inside shorten theirs "
        + "close up. The worked-out one is used.",
        field.ToString(),
        ("focal_length_mm", markedMm),
        ("focal_length_at_focus_mm", atFocusMm));

    public static Advisory DiffractionSpoils(double airyDiscUm, double permittedUm, string field = "aperture") => Make(
        AdvisoryCode.DiffractionSpoils,
        AdvisorySeverity.Warning,
        "At this effective aperture diffraction alone blurs as much as is permitted: nothing passes as sharp. Open the aperture, or "
        + "permit more blur.",
        field,
        ("airy_disc_um", airyDiscUm),
        ("permitted_blur_um", permittedUm));

    public static Advisory DiffractionCounts(double airyDiscUm, double permittedUm, string field = "aperture") => Make(
        AdvisoryCode.DiffractionCounts,
        AdvisorySeverity.Note,
        "Diffraction makes more than half of the permitted blur: the zone that counts it is noticeably shallower.",
        field,
        ("airy_disc_um", airyDiscUm),
        ("permitted_blur_um", permittedUm));

    public static Advisory BlurBelowPixel(FieldPath field, double permittedUm, double pitchUm) => Make(
        AdvisoryCode.BlurBelowPixel,
        AdvisorySeverity.Note,
        "The permitted blur is smaller than a pixel, finer than the sensor can show.",
        field.ToString(),
        ("permitted_blur_um", permittedUm),
        ("pixel_pitch_um", pitchUm));
}

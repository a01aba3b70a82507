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

    public static Advisory FreshPlateLeavesZone(FieldPath field, double shiftMm) => Make(
        AdvisoryCode.FreshPlateLeavesZone,
        AdvisorySeverity.Warning,
        "The fresh plate's main component stands at another height than the stand-in, and leaves the sharp zone with focus left as it "
        + "is. Raise or lower the stand-in by as much before focus is set, or set the aperture and focus that hold both, where they are "
        + "told.",
        field.ToString(),
        ("fresh_plate_shift_mm", shiftMm));

    public static Advisory FocusSlipSmall(double slipMm) => Make(
        AdvisoryCode.FocusSlipSmall,
        AdvisorySeverity.Warning,
        "Focus may slip by less than a millimetre before the main component is lost, less than a plate is usually put back by (common "
        + "practice). Close the aperture, frame wider, or take several frames.",
        "solution",
        ("slip_mm", slipMm));

    public static Advisory ComponentBlurred(string field, double sharpShare) => Make(
        AdvisoryCode.ComponentBlurred,
        AdvisorySeverity.Note,
        "This component matters and is not sharp as a whole: the frame holds the main component before it.",
        field,
        ("sharp_share", sharpShare));

    public static Advisory NoMarkHolds(double fNumber) => Make(
        AdvisoryCode.NoMarkHolds,
        AdvisorySeverity.Warning,
        "The depth holds at this f-number, but at no mark from it on: the next one blurs too much by diffraction or lies beyond the "
        + "lens. Set it between marks where the ring allows.",
        "solution.aperture",
        ("f_number", fNumber));
}

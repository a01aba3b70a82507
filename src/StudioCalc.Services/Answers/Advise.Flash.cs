using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Flash, motion, flicker and colour.</content>
internal static partial class Advise
{
    public static Advisory SourceTooWide(FieldPath field, double widthMm, double distanceMm) => Make(
        AdvisoryCode.SourceTooWide,
        AdvisorySeverity.Warning,
        "The source is wider than a fifth of its distance: its light does not follow the inverse square, and a guide number does "
        + "not hold (common practice). Meter the flash instead.",
        field.ToString(),
        ("source_width_mm", widthMm),
        ("distance_mm", distanceMm));

    public static Advisory GuideNumberAsGiven() => Make(
        AdvisoryCode.GuideNumberAsGiven,
        AdvisorySeverity.Note,
        "A guide number holds for the reflector or zoom setting that it was stated with, and makers often state it for a small, "
        + "pale room. Check with a meter or a test frame.",
        "units");

    public static Advisory SeveralPops() => Make(
        AdvisoryCode.SeveralPops,
        AdvisorySeverity.Warning,
        "Several pops need a subject and a camera that stay still, and time to recycle in between; steam, melting and wilting show. "
        + "Light that stays on adds up for as long as the shutter is open, so darken the room.",
        "pops");

    public static Advisory FlashBlurUnknown(FieldPath field) => Make(
        AdvisoryCode.FlashBlurUnknown,
        AdvisorySeverity.Warning,
        "The blur cannot be told from t0.5: the flash goes on well after it, three times as long or hardly at all, depending on the "
        + "head. Ask for t0.1.",
        field.ToString());

    public static Advisory FlashCutOff(double lossStops) => Make(
        AdvisoryCode.FlashCutOff,
        AdvisorySeverity.Warning,
        "The shutter closes before the flash is over; a pulse that dies away loses more than a tenth of a stop, and its colour shifts.",
        "flash_cut_off_stops",
        ("flash_cut_off_stops", lossStops));

    public static Advisory BlurBeyondPermitted(FieldPath field, double blurUm, double permittedUm) => Make(
        AdvisoryCode.BlurBeyondPermitted,
        AdvisorySeverity.Warning,
        "The motion blurs more than permitted in this time.",
        field.ToString(),
        ("blur_um", blurUm),
        ("permitted_blur_um", permittedUm));

    public static Advisory FlashingLight(double framesPerS) => Make(
        AdvisoryCode.FlashingLight,
        AdvisorySeverity.Caution,
        "More than three flashes a second can set off a seizure in people with photosensitive epilepsy. Warn everybody in the room "
        + "beforehand, or flash more slowly, and follow the local rules.",
        "",
        ("frames_per_s", framesPerS));

    public static Advisory HeadOverheating(uint frames) => Make(
        AdvisoryCode.HeadOverheating,
        AdvisorySeverity.Caution,
        "A long series as fast as the head recycles makes it hot; makers limit the number of flashes in a row. Keep to the maker's "
        + "limit, let it cool before you touch or cover it, and never open it: its capacitors stay charged when it is unplugged.",
        "frames",
        ("frames", frames));

    public static Advisory RecyclingSlower(double wantedS, double intervalS) => Make(
        AdvisoryCode.RecyclingSlower,
        AdvisorySeverity.Warning,
        "The head recycles more slowly than the wanted interval; frames taken earlier are darker. The series is timed at the head's pace.",
        "wanted_interval_s",
        ("wanted_interval_s", wantedS),
        ("interval_s", intervalS));

    public static Advisory BandsVisible(double banding, double tolerated) => Make(
        AdvisoryCode.BandsVisible,
        AdvisorySeverity.Warning,
        "Bands at this shutter speed may be stronger than tolerated. The figure is for light that swings evenly between full and "
        + "dark; real lamps differ either way, so take test frames.",
        "shutter_speed",
        ("banding", banding),
        ("tolerated_banding", tolerated));

    public static Advisory NoMarkWithoutBands() => Make(
        AdvisoryCode.NoMarkWithoutBands,
        AdvisorySeverity.Warning,
        "No mark within the camera's limits keeps the bands within the tolerance. Set a whole multiple of the flicker period where "
        + "the camera allows it, or change the light.",
        "speeds");

    public static Advisory ColourLeft(double restMired) => Make(
        AdvisoryCode.ColourLeft,
        AdvisorySeverity.Warning,
        "The nearest gel leaves a difference of colour that shows beside the other light (more than 15 mired, common practice).",
        "gels",
        ("rest_mired", restMired));

    public static Advisory GelOnHotLamp() => Make(
        AdvisoryCode.GelOnHotLamp,
        AdvisorySeverity.Caution,
        "Light of this colour temperature may come from a hot lamp. Use heat-resistant gel in a holder away from the lamp, keep vents "
        + "free, and follow the maker's instructions and the local fire rules.",
        "from_k");
}

using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Fall-off, fits and errors of a placement.</content>
internal static partial class Advise
{
    public static Advisory TapeErrorLarge(FieldPath field, double tapeMm, double distanceMm) => Make(
        AdvisoryCode.TapeErrorLarge,
        AdvisorySeverity.Warning,
        "The tape's error is more than a tenth of the distance: the light changes along it, and the errors here are too simple. "
        + "Measure better, or set the light by the meter alone.",
        field.ToString(),
        ("tape_error_mm", tapeMm),
        ("distance_mm", distanceMm));

    public static Advisory DistancesClose(FieldPath field, double ratio) => Make(
        AdvisoryCode.DistancesClose,
        AdvisorySeverity.Warning,
        "The farthest reading is less than twice as far as the nearest: the fit is mostly the rounding of the meter. Spread the "
        + "readings wider.",
        field.ToString(),
        ("farthest_over_nearest", ratio));

    public static Advisory FitExtrapolated(string field, double distanceMm, double nearestMm, double farthestMm) => Make(
        AdvisoryCode.FitExtrapolated,
        AdvisorySeverity.Warning,
        "This distance lies outside those that were read, where the models part from each other and from the light. Read there too.",
        field,
        ("distance_mm", distanceMm),
        ("nearest_read_mm", nearestMm),
        ("farthest_read_mm", farthestMm));

    public static Advisory ModelsFitAlike(double differenceStops) => Make(
        AdvisoryCode.ModelsFitAlike,
        AdvisorySeverity.Note,
        "These readings do not tell a soft face from a beam. Take the soft face for a diffuser or a window, the beam for a bare or "
        + "focused reflector; a third reading close by tells them apart.",
        "fits",
        ("residuals_differ_stops", differenceStops));
}

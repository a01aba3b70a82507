using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Advisories on lights that are compared, told apart or followed.</content>
internal static partial class Advise
{
    public static Advisory KeyWeakerThanFill(double keyOverFillStops) => Make(
        AdvisoryCode.KeyWeakerThanFill,
        AdvisorySeverity.Note,
        "The light called the key is the weaker one: the ratio is below 1:1. When metering, the smaller f-number is the weaker light.",
        "",
        ("key_over_fill_stops", keyOverFillStops));

    public static Advisory SeparationUncertain(double errorStops) => Make(
        AdvisoryCode.SeparationUncertain,
        AdvisorySeverity.Warning,
        "The flash is a small part of the reading, so it may be off by more than a third of a stop. Shade the meter from the "
        + "daylight, or read at a faster shutter speed.",
        "",
        ("error_stops", errorStops));

    public static Advisory DriftUnsteady(double spreadStops) => Make(
        AdvisoryCode.DriftUnsteady,
        AdvisorySeverity.Warning,
        "The readings lie off a straight line by more than the tolerance, as when clouds pass: the drift is no forecast. Read "
        + "the back light again just before the frame.",
        "",
        ("spread_stops", spreadStops));
}

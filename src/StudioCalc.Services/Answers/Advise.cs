using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>The advisories of the contract. Each has one wording, here.</summary>
internal static partial class Advise
{
    public static Advisory AmbiguousMark(FieldPath field, double value) => Make(
        AdvisoryCode.AmbiguousMark,
        AdvisorySeverity.Note,
        "This mark means another value on another scale. It was read in third stops; state the scale to be sure.",
        field.ToString(),
        ("value", value));

    public static Advisory UnusualCalibration(FieldPath field, double constant) => Make(
        AdvisoryCode.UnusualCalibration,
        AdvisorySeverity.Note,
        "The calibration constant lies outside the range that ISO 2720 recommends for this receptor; it is used as given.",
        field.ToString(),
        ("calibration_constant", constant));

    public static Advisory ReceptorsDiffer() => Make(
        AdvisoryCode.ReceptorsDiffer,
        AdvisorySeverity.Warning,
        "The two lights were read with different receptors or calibration constants; flat against dome alone is 0.4 stop. "
        + "Read both with a flat receptor that points at its light.");

    public static Advisory RoundedRatio(double restStops) => Make(
        AdvisoryCode.RoundedRatio,
        AdvisorySeverity.Warning,
        "The nearest settings miss the asked ratio by more than a tenth of a stop. A small move of the flash takes up the rest.",
        "",
        ("rest_stops", restStops));

    public static Advisory SyncMargin(double marginStops) => Make(
        AdvisoryCode.SyncMargin,
        AdvisorySeverity.Warning,
        "The shutter speed is within a third of a stop of the sync speed. A radio trigger may cost that much: look for a dark "
        + "band along one edge of a test frame (common practice).",
        "",
        ("margin_stops", marginStops));

    public static Advisory LensFilterKeepsRatio() => Make(
        AdvisoryCode.LensFilterKeepsRatio,
        AdvisorySeverity.Note,
        "A filter on the lens dims both lights alike and does not change their ratio. Diffusion or a gel on one light does.");

    public static Advisory InverseSquareAssumed() => Make(
        AdvisoryCode.InverseSquareAssumed,
        AdvisorySeverity.Warning,
        "The new distance follows the inverse square, which overstates what a softbox gains close by. Meter again after the move.");

    public static Advisory MovingLights() => Make(
        AdvisoryCode.MovingLights,
        AdvisorySeverity.Caution,
        "Weight the stand before you move a light, keep cables dry and off the walkway, and hang nothing over a hot lamp or "
        + "against an air vent. Follow the maker's instructions and the local rules for electrical equipment.");

    private static Advisory Make(
        AdvisoryCode code, AdvisorySeverity severity, string text, string field = "", params ReadOnlySpan<(string Name, double Value)> values)
    {
        var advisory = new Advisory { Code = code, Severity = severity, Field = field, Text = text };
        foreach (var (name, value) in values)
        {
            advisory.Values.Add(name, value);
        }

        return advisory;
    }
}

using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Reflections.</content>
internal static partial class Advise
{
    /// <summary>Share left of a reflection behind a polarising filter under which it is worth one: a choice.</summary>
    public const double PolarisedAway = 0.1;

    public static Advisory GlareFromCameraSide(string field, double coveredShare) => Make(
        AdvisoryCode.GlareFromCameraSide,
        AdvisorySeverity.Warning,
        "This reflection is not wanted and comes from the camera's side or from above, where it lies over the food as flat glare. Move "
        + "the thing, the camera or the surface, or set the black card.",
        field,
        ("covered_share", coveredShare));

    public static Advisory CardBeforeLens(string field, double hiddenShare) => Make(
        AdvisoryCode.CardBeforeLens,
        AdvisorySeverity.Warning,
        "The black card would stand between the camera and the surface. Ask for a distance beyond the camera, or cut a hole in it for "
        + "the lens.",
        field,
        ("hidden_share", hiddenShare));

    public static Advisory CardTakesWanted(string field, double lostShare) => Make(
        AdvisoryCode.CardTakesWanted,
        AdvisorySeverity.Warning,
        "The black card takes a wanted highlight away too, in this share of the surface. Make it smaller on that side and look.",
        field,
        ("wanted_lost_share", lostShare));

    public static Advisory CardDoesNotReach(string field, double distanceMm) => Make(
        AdvisoryCode.CardDoesNotReach,
        AdvisorySeverity.Warning,
        "No one flat card at this distance takes the reflection away: the thing stands nearer than the card would, or mirrors over too "
        + "wide an angle. Ask for a shorter distance, or cover or move the thing itself.",
        field,
        ("card_distance_mm", distanceMm));

    public static Advisory PolariserHelps(string field, double restShare) => Make(
        AdvisoryCode.PolariserHelps,
        AdvisorySeverity.Note,
        "At this angle a polarising filter on the lens takes nearly all of this reflection away; this share of it stays. It costs one "
        + "to two stops, and takes wanted highlights at the same angle too.",
        field,
        ("rest_share", restShare));

    public static Advisory WavesMove(string field, double waveDeg) => Make(
        AdvisoryCode.WavesMove,
        AdvisorySeverity.Note,
        "A waving surface mirrors in specks that differ in each frame. The shares are means over all slopes up to this one; the card "
        + "is as large as the whole thing needs.",
        field,
        ("wave_deg", waveDeg));

    public static Advisory BlackCardNearLamp(string field, double distanceMm) => Make(
        AdvisoryCode.CardNearLamp,
        AdvisorySeverity.Caution,
        "The black card would stand close to this thing. If it is a hot lamp, card, foam and cloth catch fire: keep the distance that "
        + "the maker of the light states, use lamps that stay cool, and do not leave it alone. Weight and tie down what could fall.",
        field,
        ("distance_mm", distanceMm));
}

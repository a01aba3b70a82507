using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Framing, stacks, keepers and tilt.</content>
internal static partial class Advise
{
    public static Advisory LensReachesSubject(double workingDistanceMm) => Make(
        AdvisoryCode.LensReachesSubject,
        AdvisorySeverity.Warning,
        "The front of the lens, or its hood, would touch the subject or reach beyond it. Use a longer lens, or frame wider.",
        "working_distance_mm",
        ("working_distance_mm", workingDistanceMm));

    public static Advisory PositionsCut(int leftOut) => Make(
        AdvisoryCode.ListCut,
        AdvisorySeverity.Note,
        "The list of positions ends early; those left out lie farthest back.",
        "positions",
        ("left_out_count", leftOut));

    public static Advisory RailMovesViewpoint(double travelMm) => Make(
        AdvisoryCode.RailMovesViewpoint,
        AdvisorySeverity.Note,
        "On a focusing rail the viewpoint moves with each frame, so that parts at different depths shift against one another. Deep "
        + "subjects merge more cleanly by focus ring. Keep the travel clear of the set and of props.",
        "",
        ("travel_mm", travelMm));

    public static Advisory FoodMovesInStack(double timeS) => Make(
        AdvisoryCode.FoodMovesInStack,
        AdvisorySeverity.Warning,
        "The stack takes longer than 20 s (common practice): food that steams, melts, wilts or settles moves between its frames, and "
        + "the frames do not merge. Stack what keeps still, and take hot or fresh parts in one frame.",
        "",
        ("time_s", timeS));

    public static Advisory FramesShareError(double keepChance) => Make(
        AdvisoryCode.FramesShareError,
        AdvisorySeverity.Warning,
        "With focus locked the frames share one error: all are sharp or none, and more of them gain nothing. Focus anew before each, "
        + "or bracket focus.",
        "focus_is_locked",
        ("keep_chance", keepChance));

    public static Advisory BiasInEveryFrame(double biasMm, double keepChanceWithout) => Make(
        AdvisoryCode.BiasInEveryFrame,
        AdvisorySeverity.Note,
        "Focus is off by the same bias in every frame. Shifting it back by as much gains more than further frames.",
        "bias_mm",
        ("bias_mm", biasMm),
        ("keep_chance_without_bias", keepChanceWithout));

    public static Advisory TiltLaysOnePlane() => Make(
        AdvisoryCode.TiltLaysOnePlane,
        AdvisorySeverity.Warning,
        "Tilt lays one plane sharp, no more. The zone about it is a wedge, thinnest near the camera, and a tall component leaves it: "
        + "check the top of the main component.",
        "solution");

    public static Advisory ScalesOffWhenTilted() => Make(
        AdvisoryCode.ScalesOffWhenTilted,
        AdvisorySeverity.Note,
        "With the lens tilted its focus scale and the distance that the camera records do not hold. Set focus by eye, magnified, at "
        + "two points of the plane.",
        "solution");
}

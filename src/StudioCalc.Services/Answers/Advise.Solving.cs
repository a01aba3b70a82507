using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Advisories on solved settings, lists and headroom.</content>
internal static partial class Advise
{
    public static Advisory LossReadThroughLens(double lossStops) => Make(
        AdvisoryCode.LossReadThroughLens,
        AdvisorySeverity.Note,
        "The loss of filters and close focus is added to this reading. A meter that reads through the same lens has it already: "
        + "leave both out then.",
        "",
        ("lens_loss_stops", lossStops));

    public static Advisory ListCut(int leftOut) => Make(
        AdvisoryCode.ListCut,
        AdvisorySeverity.Note,
        "The list ends early; the settings left out have the highest ISO. Narrow the camera's limits to see them.",
        "settings",
        ("left_out_count", leftOut));

    public static Advisory SurfaceClips(double leftStops) => Make(
        AdvisoryCode.SurfaceClips,
        AdvisorySeverity.Warning,
        "The surface is brighter than clipping and loses its detail. Give less exposure, or weaken the light on it.",
        "left_stops",
        ("left_stops", leftStops));

    public static Advisory HeadroomByDefinition() => Make(
        AdvisoryCode.HeadroomByDefinition,
        AdvisorySeverity.Note,
        "This headroom follows from a definition and holds where the set ISO is a saturation speed. Cameras often leave more, some "
        + "0.3 to 1 stop (common practice): measure yours to be sure.",
        "headroom_stops");
}

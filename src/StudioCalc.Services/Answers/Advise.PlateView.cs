using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>What a camera sees of a dish.</content>
internal static partial class Advise
{
    public static Advisory CameraOverhead(double elevationDeg) => Make(
        AdvisoryCode.CameraOverhead,
        AdvisorySeverity.Caution,
        "At this angle the camera hangs over the table. Put weight on the stand, tie camera and lens with a safety line, let nobody lean under it, "
        + "and follow the makers' loads.",
        "",
        ("elevation_deg", elevationDeg));

    public static Advisory MainOutsideFrame(string field, double share) => Make(
        AdvisoryCode.MainOutsideFrame,
        AdvisorySeverity.Warning,
        "Part of the main component lies outside the frame. Widen the field, or aim at it.",
        field,
        ("outside_frame_share", share));

    public static Advisory MainHidden(string field, double share) => Make(
        AdvisoryCode.MainHidden,
        AdvisorySeverity.Warning,
        "More than a twentieth of the main component is hidden. Turn the plate, raise the camera, or move what hides it.",
        field,
        ("hidden_share", share));

    public static Advisory ComponentUnseen(string field, double share) => Make(
        AdvisoryCode.ComponentUnseen,
        AdvisorySeverity.Warning,
        "Less than a tenth of this component shows: a viewer will not know that it is on the plate.",
        field,
        ("visible_share", share));

    public static Advisory CoarseSightLines(string field, double uncertainty) => Make(
        AdvisoryCode.CoarseSightLines,
        AdvisorySeverity.Note,
        "So few sight lines meet this component that its shares are coarse. Ask for more of them.",
        field,
        ("uncertainty_share", uncertainty));

    public static Advisory ClearWallsBendLight(string field) => Make(
        AdvisoryCode.ClearWallsBendLight,
        AdvisorySeverity.Note,
        "Clear walls are taken as air. Glass and liquid bend and mirror light, so what stands behind shows displaced or not at all near the edges.",
        field);
}

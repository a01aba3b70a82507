using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Views that were looked for, and moves.</content>
internal static partial class Advise
{
    public static Advisory BestViewAtEnd(string field, double angleDeg) => Make(
        AdvisoryCode.BestViewAtEnd,
        AdvisorySeverity.Note,
        "The best view lies at the end of the angles that were looked at. A better one may lie beyond: look further.",
        field,
        ("angle_deg", angleDeg));

    public static Advisory ComponentOutsideFrame(string field, double share) => Make(
        AdvisoryCode.ComponentOutsideFrame,
        AdvisorySeverity.Warning,
        "Half of this component or more lies outside the frame of the best view. Widen the field, or aim elsewhere; shares count what is "
        + "outside the frame too.",
        field,
        ("outside_frame_share", share));

    public static Advisory RestingNotMoved(string field) => Make(
        AdvisoryCode.RestingNotMoved,
        AdvisorySeverity.Note,
        "This component rests on another one, carries one, or stands on nothing that is told, so that moving it was not tried.",
        field);
}

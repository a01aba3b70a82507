using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Bowls and sight lines.</content>
internal static partial class Advise
{
    /// <summary>Height of an upright front in the picture over its own from which it counts as narrow: a choice, a fifth.</summary>
    public const double NarrowFront = 0.2;

    public static Advisory ElevationConverted(FieldPath field, double givenDeg, double elevationDeg) => Make(
        AdvisoryCode.ElevationConverted,
        AdvisorySeverity.Note,
        "This elevation was given from the vertical, where 0 is straight down, and converted. The answer counts from the table: 0 is "
        + "level with it, 90 straight down.",
        field.ToString(),
        ("given_deg", givenDeg),
        ("elevation_deg", elevationDeg));

    public static Advisory MiddleIsNotHalf(double visibleShare, double halfDeg) => Make(
        AdvisoryCode.MiddleIsNotHalf,
        AdvisorySeverity.Note,
        "The middle of the content shows, and still less than half of its surface. Half shows from the elevation given here.",
        "visible_share",
        ("visible_share", visibleShare),
        ("half_elevation_deg", halfDeg));

    public static Advisory NothingShows(string field, double? showsAboveDeg) => showsAboveDeg is { } above
        ? Make(
            AdvisoryCode.NothingShows,
            AdvisorySeverity.Warning,
            "Nothing shows from here. Raise the camera over the elevation given here, or move what stands before it.",
            field,
            ("shows_above_deg", above))
        : Make(
            AdvisoryCode.NothingShows,
            AdvisorySeverity.Warning,
            "Nothing shows from here, nor from any elevation: move what stands before it.",
            field);

    public static Advisory FrontForeshortened(double heightShare) => Make(
        AdvisoryCode.FrontForeshortened,
        AdvisorySeverity.Note,
        "From so steep an elevation upright fronts are narrow in the picture, whatever share of them shows.",
        "visible_height_share",
        ("picture_height_share", heightShare));
}

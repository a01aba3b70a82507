using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Window and sun.</content>
internal static partial class Advise
{
    /// <summary>Share of the light outdoors under which a room's own reflections count: common practice.</summary>
    public const double RoomLightShare = 0.1;

    public static Advisory SkyWithoutSun() => Make(
        AdvisoryCode.SkyWithoutSun,
        AdvisorySeverity.Warning,
        "The light is that of an evenly bright sky. Direct sun is not in it: on the plate it adds several stops and does not fall off. "
        + "Ask when the sun reaches the plate, or keep it out by diffusion over the whole window.",
        "sky");

    public static Advisory RoomLightCounts(string field, double share) => Make(
        AdvisoryCode.RoomLightCounts,
        AdvisorySeverity.Note,
        "Less than a tenth of the light outdoors comes here straight from the window. White walls and ceiling often add some hundredths "
        + "more (common practice), so that the light falls off less than told.",
        field,
        ("share", share));

    public static Advisory SkyDrifts() => Make(
        AdvisoryCode.SkyDrifts,
        AdvisorySeverity.Note,
        "One reading stands for all places. The sky drifts: to check a second place, read both within a minute and repeat the first.",
        "reading");

    public static Advisory DomeSeesWider(string field) => Make(
        AdvisoryCode.DomeSeesWider,
        AdvisorySeverity.Note,
        "A dome takes in light from the side and from behind that a flat surface does not. For a ratio of lights read with a flat disc.",
        field);

    public static Advisory GroundTakenAsDark(string field, double sillBelowMm) => Make(
        AdvisoryCode.GroundTakenAsDark,
        AdvisorySeverity.Note,
        "The window begins below this place, and shows ground there, which is taken as dark. Give the luminance of what lies below the "
        + "skyline where it is bright, such as snow or a sunlit wall.",
        field,
        ("sill_below_mm", sillBelowMm));

    public static Advisory SunOnPlate(double totalS) => Make(
        AdvisoryCode.SunOnPlate,
        AdvisorySeverity.Warning,
        "Direct sun reaches the plate. It is in no other number: it adds several stops, casts hard shadows, and moves across the set by "
        + "15 degrees an hour. Shoot around it, or put diffusion over the whole window.",
        "spells",
        ("total_s", totalS));

    public static Advisory SunBurns() => Make(
        AdvisoryCode.SunBurns,
        AdvisorySeverity.Caution,
        "Never look at the sun through a lens or finder. Keep silver cards, mirrors, lenses and filled glasses out of its beam: they "
        + "can blind people and set things on fire. It also warms the food.",
        "spells");
}

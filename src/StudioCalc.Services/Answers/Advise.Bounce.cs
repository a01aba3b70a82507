using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Bounce and shadow.</content>
internal static partial class Advise
{
    /// <summary>Reflectance from which light to and fro counts: common practice.</summary>
    public const double BrightReflectance = 0.5;

    /// <summary>Distance of a card from a light under which heat matters: common practice.</summary>
    public const double HotDistanceMm = 300;

    /// <summary>Error of a shaded share from which more cells are worth their time.</summary>
    public const double RoughShare = 0.02;

    public static Advisory OneReflection(double reflectance) => Make(
        AdvisoryCode.OneReflection,
        AdvisorySeverity.Note,
        "One reflection is counted. Among white walls, ceiling and table light goes to and fro and adds more, at most by the factor given.",
        "surface",
        ("largest_factor", reflectance < 1 ? 1 / (1 - reflectance) : 100));

    public static Advisory CardInTheWay(string field) => Make(
        AdvisoryCode.CardInTheWay,
        AdvisorySeverity.Warning,
        "The surface stands in the straight way from this source to the receiver. The direct light is counted as if it did not: "
        + "set direct_light_blocked, or move the surface.",
        field);

    public static Advisory CrumpledSilver() => Make(
        AdvisoryCode.CrumpledSilver,
        AdvisorySeverity.Note,
        "The numbers are those of a flat mirror, bright where the source is seen in it and nothing beside. Crumpled, pearl and brushed "
        + "silver lie between mirror and white card: meter one.",
        "surface.surface");

    public static Advisory CardNearLamp(string field, double distanceMm) => Make(
        AdvisoryCode.CardNearLamp,
        AdvisorySeverity.Caution,
        "The surface stands close to this light. Modelling and other hot lamps set card, foam and cloth on fire: keep the distance "
        + "that the maker of the light states, use lamps that stay cool, and do not leave it alone. Weight and tie down what could fall.",
        field,
        ("distance_mm", distanceMm));

    public static Advisory CoarseCells(string field, double error) => Make(
        AdvisoryCode.CoarseCells,
        AdvisorySeverity.Note,
        "The edge of a shadow leaves this share uncertain. More cells make it finer, at the cost of time.",
        field,
        ("shaded_share_error", error));
}

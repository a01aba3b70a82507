using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Distances of sources.</content>
internal static partial class Advise
{
    public static Advisory InverseSquareMisses(string field, double distanceMm, double overStops) => Make(
        AdvisoryCode.InverseSquareMisses,
        AdvisorySeverity.Note,
        "Inverse square would place this source where it misses the wanted light by more than the band: near a large face light "
        + "changes less with distance than it says.",
        field,
        ("inverse_square_distance_mm", distanceMm),
        ("inverse_square_over_stops", overStops));

    public static Advisory SeveralDistances(string field, int count) => Make(
        AdvisoryCode.SeveralDistances,
        AdvisorySeverity.Note,
        "More than one distance gives the wanted light, for here it does not only fall as the source moves away. The one that asks "
        + "for the least move comes first.",
        field,
        ("distances_count", count));

    public static Advisory ShadowEdgeOpen(string field, double lowestMm) => Make(
        AdvisoryCode.ShadowEdgeOpen,
        AdvisorySeverity.Note,
        "Part of the face lies no higher than the edge, so its rays over the edge never reach the table: the soft edge of the shadow "
        + "has no outer end.",
        field,
        ("lowest_mm", lowestMm));

    public static Advisory FlatFoodDarker(string field, double underStops) => Make(
        AdvisoryCode.FlatFoodDarker,
        AdvisorySeverity.Note,
        "The light is told for a receiver that is turned to it. Flat food there, which faces up, gets this much less.",
        field,
        ("flat_under_stops", underStops));

    public static Advisory FillNotUnder(string field, double underStops) => Make(
        AdvisoryCode.FillNotUnder,
        AdvisorySeverity.Note,
        "The fill is to be as bright as the other light or brighter: then it no longer fills but leads. Positive stops lie under the "
        + "other light.",
        field,
        ("under_stops", underStops));

    public static Advisory FillWaysCut(string field, int leftOut) => Make(
        AdvisoryCode.ListCut,
        AdvisorySeverity.Note,
        "The list of ways ends early; those left out come last by the preference. Ask for fewer powers, distances or directions.",
        field,
        ("left_out_count", leftOut));
}

using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Where lights stand.</content>
internal static partial class Advise
{
    public static Advisory PointHasNoSize(string field, double nearestMm) => Make(
        AdvisoryCode.PointHasNoSize,
        AdvisorySeverity.Note,
        "A point follows inverse square at any distance. A real face does within 1 % only while its largest dimension is under "
        + "a fifth of the distance; give a larger one its shape.",
        field,
        ("largest_size_mm", nearestMm / 5));

    public static Advisory LightOverhead(string field, double heightMm) => Make(
        AdvisoryCode.LightOverhead,
        AdvisorySeverity.Caution,
        "A light over the set needs a stand and boom rated for its load, sandbags, a second safety line, and nobody beneath while "
        + "it is moved. Keep cables dry and on a residual-current device, keep flash away from eyes, and never open a flash: its "
        + "capacitors stay charged. Local rules and the maker's instructions come first.",
        field,
        ("height_mm", heightMm));

    public static Advisory FaceBelowTable(string field, double lowestMm) => Make(
        AdvisoryCode.FaceBelowTable,
        AdvisorySeverity.Warning,
        "Part of this face lies lower than the table top. The numbers count it as if nothing were in its way, but the table may "
        + "hide it from the food.",
        field,
        ("lowest_mm", lowestMm));
}

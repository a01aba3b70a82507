using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>The cautions of a plan with the plates that they are about.</summary>
internal static class SheetCautions
{
    public static IReadOnlyList<SheetCaution> Of(PlanShootResponse plan, ShootDay day) =>
    [
        .. plan.Advisories.Where(one => one.Severity == AdvisorySeverity.Caution).Select(one => new SheetCaution(one.Text, About(one.Code, day))),
    ];

    private static IReadOnlyList<string> About(AdvisoryCode code, ShootDay day) => code switch
    {
        AdvisoryCode.AllergensAsDeclared =>
            [.. day.Plates.Where(plate => plate.Allergens.Count > 0).Select(plate => $"{plate.Name}: {string.Join(", ", plate.Allergens)}")],
        AdvisoryCode.NotForEating => [.. day.Plates.Where(plate => plate.NotForEating).Select(plate => plate.Name)],
        _ => [],
    };
}

using StudioCalc.Maths;
using StudioCalc.V1;
using Unit = StudioCalc.V1.FlashUnit;
using Unknown = StudioCalc.V1.FlashUnknown;

namespace StudioCalc.Services;

/// <summary>Reads the units of a flash request.</summary>
internal static class SolveFlashUnits
{
    private const int MostUnits = 16;

    private static readonly FieldPath[] Paths =
    [
        .. Enumerable.Range(0, MostUnits).Select(FieldPath.Root(SolveFlashRequest.Descriptor)[SolveFlashRequest.UnitsFieldNumber].At),
    ];

    /// <summary>The path of a field of a unit.</summary>
    public static FieldPath Path(int index, int fieldNumber) => Paths[index][fieldNumber];

    /// <summary>Reads a unit, or returns null after noting every bad field.</summary>
    /// <param name="context">Gathers bad fields.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="index">Its place in the list.</param>
    /// <param name="unknown">What is solved for on this unit; unspecified on all but the first.</param>
    /// <param name="trail">Follows the sum.</param>
    public static Maths.FlashUnit? Read<TTrail>(RequestContext context, Unit unit, int index, Unknown unknown, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var guideNumberIsGiven = SolveFlashReader.OneOf(
            context, unknown == Unknown.GuideNumber, unit.HasGuideNumberM, Path(index, Unit.GuideNumberMFieldNumber).ToString());
        var distanceIsGiven = SolveFlashReader.OneOf(
            context, unknown == Unknown.Distance, unit.HasDistanceMm, Path(index, Unit.DistanceMmFieldNumber).ToString());
        if (unknown == Unknown.Power && unit.Power is not null)
        {
            SolveFlashReader.OneOf(context, true, true, Path(index, Unit.PowerFieldNumber).ToString());
        }

        var iso = unit.GuideNumberIso is null ? 100 : context.Read(unit.GuideNumberIso, Path(index, Unit.GuideNumberIsoFieldNumber));
        var power = unit.Power is null ? 0 : context.Read(unit.Power, Path(index, Unit.PowerFieldNumber));
        var loss = LossReader.ReadLossStops(unit.Filters, ref trail);
        return iso is null || power is null
            ? null
            : new()
            {
                GuideNumberM = guideNumberIsGiven ? unit.GuideNumberM : 1,
                GuideNumberIso = iso.Value,
                DistanceMm = distanceIsGiven ? unit.DistanceMm : 1000,
                PowerBelowFullStops = power.Value,
                Count = unit.HasCount ? (int)unit.Count : 1,
                LossStops = loss,
                FullEnergyJ = unit.HasFullEnergyJ ? unit.FullEnergyJ : null,
            };
    }
}

namespace StudioCalc.Services;

/// <summary>Choices of freshness between the maths and the contract.</summary>
internal static class FreshnessEnums
{
    public static V1.HoldingModel ToContract(this Maths.HoldingModel model) => model switch
    {
        Maths.HoldingModel.FixedWindow => V1.HoldingModel.FixedWindow,
        Maths.HoldingModel.WellMixedLiquid => V1.HoldingModel.WellMixedLiquid,
        Maths.HoldingModel.FilmOnPlate => V1.HoldingModel.FilmOnPlate,
        Maths.HoldingModel.SolidSeries => V1.HoldingModel.SolidSeries,
        Maths.HoldingModel.SolidNumeric => V1.HoldingModel.SolidNumeric,
        Maths.HoldingModel.FoodAndPlate => V1.HoldingModel.FoodAndPlate,
        Maths.HoldingModel.IceCream => V1.HoldingModel.IceCream,
        Maths.HoldingModel.Condensation => V1.HoldingModel.Condensation,
        Maths.HoldingModel.FirstOrder => V1.HoldingModel.FirstOrder,
        Maths.HoldingModel.LeafDamage => V1.HoldingModel.LeafDamage,
        _ => throw new ArgumentOutOfRangeException(nameof(model)),
    };

    public static V1.SourceKind ToContract(this Maths.SourceKind kind) => kind switch
    {
        Maths.SourceKind.Given => V1.SourceKind.Given,
        Maths.SourceKind.Standard => V1.SourceKind.Standard,
        Maths.SourceKind.Published => V1.SourceKind.Published,
        Maths.SourceKind.Computed => V1.SourceKind.Computed,
        Maths.SourceKind.Practice => V1.SourceKind.Practice,
        Maths.SourceKind.Memory => V1.SourceKind.Memory,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}

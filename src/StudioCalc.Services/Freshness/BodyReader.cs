using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Food as read, with what its properties came from.</summary>
internal sealed record BodyRead(FoodBody Body, PropertiesRead? Properties);

/// <summary>Reads food whose temperature is followed. What cannot be is noted, and the food is then null.</summary>
internal static class BodyReader
{
    private const double UsualPlateMm = 280;
    private const double UsualFaceMm = 138;
    private const double UsualContact = 150;
    private const double UsualPlateToRoom = 10;
    private const double UsualWall = 11;
    private const double HottestWetCelsius = 100;

    /// <summary>Whether water evaporates from it or condenses on it.</summary>
    public static bool HasVapour(FoodItem item) => item.KindCase switch
    {
        FoodItem.KindOneofCase.Liquid => WetnessOf(item.Liquid) > 0,
        FoodItem.KindOneofCase.Film => item.Film.Wetness > 0,
        FoodItem.KindOneofCase.Piece => item.Piece.Wetness > 0,
        FoodItem.KindOneofCase.Leaves when item.Leaves.Food is { } under => HasVapour(Under(under)),
        FoodItem.KindOneofCase.Glass => true,
        _ => false,
    };

    /// <summary>Food under leaves as an item of its own.</summary>
    public static FoodItem Under(FoodUnderLeaves food) => food.KindCase switch
    {
        FoodUnderLeaves.KindOneofCase.Liquid => new() { Liquid = food.Liquid },
        FoodUnderLeaves.KindOneofCase.Film => new() { Film = food.Film },
        _ => new() { Piece = food.Piece },
    };

    public static BodyRead? Read(this RequestContext context, WellMixedLiquid liquid, FieldPath path)
    {
        var properties = liquid.Properties is null
            ? new PropertiesRead(Maths.FoodProperties.Water, null, null)
            : context.Read(liquid.Properties, liquid.StartCelsius, path[WellMixedLiquid.PropertiesFieldNumber]);
        var isUnfrozen = context.IsUnfrozen(liquid.StartCelsius, liquid.Properties is null || properties?.IsFood == true, path[WellMixedLiquid.StartCelsiusFieldNumber]);
        var plate = context.Read(liquid.Plate, liquid.SurfaceDiameterMm, path[WellMixedLiquid.PlateFieldNumber], path[WellMixedLiquid.SurfaceDiameterMmFieldNumber]);
        if (properties is null || !isUnfrozen || (liquid.Plate is not null && plate is null))
        {
            return null;
        }

        return new(
            new LiquidBody(
                liquid.StartCelsius, liquid.MassG, liquid.SurfaceDiameterMm, properties.Properties, WetnessOf(liquid),
                liquid.HasWallWPerM2K ? liquid.WallWPerM2K : UsualWall, plate),
            properties);
    }

    public static BodyRead? Read(this RequestContext context, FilmOnPlate film, FieldPath path)
    {
        var properties = context.Read(film.Properties, film.StartCelsius, path[FilmOnPlate.PropertiesFieldNumber]);
        var isUnfrozen = context.IsUnfrozen(film.StartCelsius, properties?.IsFood == true, path[FilmOnPlate.StartCelsiusFieldNumber]);
        var plate = context.Read(film.Plate, film.DiameterMm, path[FilmOnPlate.PlateFieldNumber], path[FilmOnPlate.DiameterMmFieldNumber]);
        return properties is not null && isUnfrozen && plate is not null
            ? new(new FilmBody(film.StartCelsius, film.ThicknessMm, film.DiameterMm, properties.Properties, film.Wetness, plate), properties)
            : null;
    }

    public static BodyRead? Read(this RequestContext context, SolidPiece piece, FieldPath path)
    {
        var properties = context.Read(piece.Properties, piece.StartCelsius, path[SolidPiece.PropertiesFieldNumber]);
        var fits = context.IsUnfrozen(piece.StartCelsius, properties?.IsFood == true, path[SolidPiece.StartCelsiusFieldNumber]);
        if (piece.Wetness > 0 && piece.StartCelsius > HottestWetCelsius)
        {
            fits = Refuse(SolidPiece.StartCelsiusFieldNumber, RefusalReason.Conflict, "A wet surface is at most at 100 °C.");
        }

        if (piece.Shape != PieceShape.Slab)
        {
            fits &= !(piece.Wetness > 0) || Refuse(SolidPiece.WetnessFieldNumber, RefusalReason.Conflict,
                "Only the upper face of a slab is followed while it dries: leave it out.");
            fits &= !piece.LowerFaceInsulated || Refuse(SolidPiece.LowerFaceInsulatedFieldNumber, RefusalReason.Conflict, "Only a slab has a lower face.");
            fits &= piece.Plate is null || Refuse(SolidPiece.PlateFieldNumber, RefusalReason.Conflict, "Only a slab lies on a plate with its whole face.");
            fits &= !piece.HasContactDiameterMm || Refuse(SolidPiece.ContactDiameterMmFieldNumber, RefusalReason.Conflict, "Only a slab has a lower face.");
        }
        else if (piece.LowerFaceInsulated && piece.Plate is not null)
        {
            fits = Refuse(SolidPiece.LowerFaceInsulatedFieldNumber, RefusalReason.Conflict, "A face on a plate gives it heat: leave one of the two out.");
        }

        var face = piece.HasContactDiameterMm ? piece.ContactDiameterMm : UsualFaceMm;
        var plate = context.Read(piece.Plate, face, path[SolidPiece.PlateFieldNumber], path[SolidPiece.ContactDiameterMmFieldNumber]);
        if (properties is null || !fits || (piece.Plate is not null && plate is null))
        {
            return null;
        }

        var shape = piece.Shape switch
        {
            PieceShape.Slab => SolidShape.Slab,
            PieceShape.Cylinder => SolidShape.Cylinder,
            _ => SolidShape.Ball,
        };
        return new(
            new PieceBody(piece.StartCelsius, shape, piece.SizeMm, properties.Properties, piece.Wetness, piece.LowerFaceInsulated, face, plate), properties);

        bool Refuse(int field, RefusalReason reason, string text)
        {
            context.Violations.Add(path[field].ToString(), reason, text);
            return false;
        }
    }

    public static BodyRead? Read(this RequestContext context, IceCreamScoop scoop, FieldPath path)
    {
        var mix = new IceCreamMix(
            scoop.HasWaterShare ? scoop.WaterShare : 0.61,
            scoop.HasProteinShare ? scoop.ProteinShare : 0.035,
            scoop.HasFreezingCelsius ? scoop.FreezingCelsius : -2.7);
        var fits = true;
        if (scoop.StartCelsius >= mix.FreezingCelsius)
        {
            context.Violations.Add(path[IceCreamScoop.StartCelsiusFieldNumber].ToString(), RefusalReason.Conflict,
                FormattableString.Invariant($"Must be below the freezing point of the mix, {mix.FreezingCelsius:0.##} °C."));
            fits = false;
        }

        if (GlossLostOf(scoop) > mix.FreezingCelsius)
        {
            context.Violations.Add(path[IceCreamScoop.GlossLostCelsiusFieldNumber].ToString(), RefusalReason.Conflict,
                FormattableString.Invariant($"Must not be above the freezing point of the mix, {mix.FreezingCelsius:0.##} °C."));
            fits = false;
        }

        return fits
            ? new(
                new ScoopBody(
                    scoop.StartCelsius, scoop.DiameterMm, mix,
                    scoop.HasDensityKgPerM3 ? scoop.DensityKgPerM3 : 550,
                    scoop.HasConductivityWPerMK ? scoop.ConductivityWPerMK : 0.25),
                null)
            : null;
    }

    /// <summary>Surface temperature at which gloss and ridges of ice cream are lost; from memory where not told.</summary>
    public static double GlossLostOf(IceCreamScoop scoop) => scoop.HasGlossLostCelsius
        ? scoop.GlossLostCelsius
        : Math.Min(-4, scoop.HasFreezingCelsius ? scoop.FreezingCelsius : -2.7);

    private static double WetnessOf(WellMixedLiquid liquid) => liquid.HasWetness ? liquid.Wetness : 1;

    private static PlateBody? Read(this RequestContext context, ServingPlate? plate, double foodDiameterMm, FieldPath path, FieldPath foodPath)
    {
        if (plate is null)
        {
            return null;
        }

        var diameter = plate.HasDiameterMm ? plate.DiameterMm : UsualPlateMm;
        if (foodDiameterMm > diameter)
        {
            context.Violations.Add(foodPath.ToString(), RefusalReason.Conflict,
                FormattableString.Invariant($"Must not be wider than the plate, {diameter:0.#} mm."));
            return null;
        }

        return new(
            plate.MassG,
            plate.StartCelsius,
            diameter,
            plate.Material is { } material ? PropertiesReader.Of(material) : Maths.FoodProperties.Porcelain,
            plate.HasContactWPerM2K ? plate.ContactWPerM2K : UsualContact,
            plate.HasRoomWPerM2K ? plate.RoomWPerM2K : UsualPlateToRoom);
    }

    private static bool IsUnfrozen(this RequestContext context, double startCelsius, bool isWatery, FieldPath path)
    {
        if (!isWatery || startCelsius >= 0)
        {
            return true;
        }

        context.Violations.Add(path.ToString(), RefusalReason.OutOfRange,
            "Frozen food is followed as ice cream only; its properties by composition hold from 0 °C.");
        return false;
    }
}

using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Random food on random plates, so that most requests with it have an answer within minutes of its own time.</summary>
internal static class RandomFood
{
    /// <summary>Values of fields whose whole range seldom makes sense together.</summary>
    public static Gen<object>? Own(FieldDescriptor field) => (field.ContainingType.Name, field.Name) switch
    {
        ("RoomAir", "temperature_celsius") => Number(15, 30),
        ("RoomAir", "relative_humidity") => Number(0.1, 0.9),
        ("RoomAir", "walls_celsius") => Number(15, 30),
        ("RoomAir", "convection_w_per_m2_k" or "total_w_per_m2_k") => Number(3, 30),
        ("WellMixedLiquid" or "FilmOnPlate" or "SolidPiece" or "ServingPlate", "start_celsius") => Number(40, 90),
        ("IceCreamScoop", "start_celsius") => Number(-18, -12),
        ("IceCreamScoop", "freezing_celsius") => Number(-4, -1),
        ("IceCreamScoop", "gloss_lost_celsius") => Number(-8, -5),
        ("IceCreamScoop", "diameter_mm") => Number(20, 60),
        ("SolidPiece", "size_mm") => Number(10, 40),
        ("FilmOnPlate", "thickness_mm") => Number(1, 5),
        ("FilmOnPlate" or "SolidPiece" or "WellMixedLiquid", "diameter_mm" or "contact_diameter_mm" or "surface_diameter_mm") => Number(50, 200),
        ("WellMixedLiquid", "mass_g") => Number(50, 1000),
        ("ServingPlate", "mass_g") => Number(200, 1500),
        ("ServingPlate", "diameter_mm") => Number(200, 300),
        ("ServingPlate", "contact_w_per_m2_k") => Number(50, 300),
        ("ServingPlate", "room_w_per_m2_k") => Number(0, 30),
        ("WellMixedLiquid", "wall_w_per_m2_k") => Number(0, 30),
        ("ThermalProperties", "conductivity_w_per_m_k") => Number(0.2, 2),
        ("ThermalProperties", "density_kg_per_m3") => Number(500, 2500),
        ("ThermalProperties", "specific_heat_j_per_kg_k") => Number(800, 4200),
        ("FoodItem", "profile_id") => Gen.OneOf<object>("cut-apple", "souffle", "noodles"),
        ("FirstOrderDecay", "profile_id") => Gen.OneOf<object>("beer-foam", "sparkling-drink"),
        ("SetPoint", "spread_k") => Number(0, 2),
        ("SimulateCoolingRequest", "duration") => Gen.Int[1, 60].Select(seconds => (object)new Duration { Seconds = seconds }),
        ("SimulateCoolingRequest", "samples") => Gen.UInt[2, 20].Select(count => (object)count),
        _ => null,
    };

    /// <summary>Mends food: shares of a whole, set points on its way, and so on.</summary>
    public static void MakeSense(IMessage message)
    {
        switch (message)
        {
            case EstimateHoldingTimeRequest request:
                request.EndsAt = Mend(request.Item, request.EndsAt, request.Air);
                break;
            case SimulateCoolingRequest request:
                request.EndsAt = Mend(request.Item, request.EndsAt, request.Air);
                break;
            case BudgetComponent component:
                component.EndsAt = Mend(component.Item, component.EndsAt, null);
                break;
        }

        foreach (var field in message.Descriptor.Fields.InDeclarationOrder().Where(field => field.FieldType == FieldType.Message && !field.IsMap))
        {
            var inner = field.IsRepeated
                ? ((System.Collections.IEnumerable)field.Accessor.GetValue(message)).Cast<IMessage>()
                : field.Accessor.HasValue(message) ? [(IMessage)field.Accessor.GetValue(message)] : [];
            foreach (var one in inner.ToList())
            {
                MakeSense(one);
            }
        }

        if (message is FoodComposition { } mixed)
        {
            (mixed.WaterShare, mixed.ProteinShare, mixed.FatShare, mixed.CarbohydrateShare, mixed.FibreShare, mixed.AshShare) = (0.6, 0.2, 0.1, 0.08, 0.02, 0.02);
        }
    }

    private static SetPoint? Mend(FoodItem item, SetPoint? endsAt, RoomAir? air)
    {
        if (air is { HasTotalWPerM2K: true })
        {
            air.ClearWallsCelsius();
            if (BodyReader.HasVapour(item))
            {
                air.ConvectionWPerM2K = air.TotalWPerM2K;
                air.ClearTotalWPerM2K();
            }
            else
            {
                air.ClearConvectionWPerM2K();
            }

            air.ClearSpeedMPerS();
        }
        else if (air is { HasConvectionWPerM2K: true })
        {
            air.ClearSpeedMPerS();
        }

        if (item.Piece is { } piece && piece.Shape != PieceShape.Slab)
        {
            piece.Plate = null;
            piece.ClearWetness();
            piece.ClearLowerFaceInsulated();
            piece.ClearContactDiameterMm();
        }
        else if (item.Piece is { Plate: not null } plated)
        {
            plated.ClearLowerFaceInsulated();
        }

        double? start = item.KindCase switch
        {
            FoodItem.KindOneofCase.Liquid => item.Liquid.StartCelsius,
            FoodItem.KindOneofCase.Film => item.Film.StartCelsius,
            FoodItem.KindOneofCase.Piece => item.Piece.StartCelsius,
            _ => null,
        };
        if (start is not { } celsius)
        {
            return null;
        }

        // Set points of profiles may lie hours away, which says nothing more.
        endsAt ??= new();
        endsAt.SurfaceCelsius = celsius - 3;
        return endsAt;
    }

    private static Gen<object> Number(double low, double high) => Gen.Double[low, high].Select(value => (object)value);
}

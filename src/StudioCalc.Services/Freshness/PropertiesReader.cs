using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Thermal properties as read, with the bounds of the conductivity where they come from a composition.</summary>
internal sealed record PropertiesRead(Maths.FoodProperties Properties, double? Series, double? Parallel)
{
    public bool IsFood => Series is not null;
}

/// <summary>Reads thermal properties.</summary>
internal static class PropertiesReader
{
    /// <summary>The properties at a temperature, or null after noting a bad field.</summary>
    public static PropertiesRead? Read(this RequestContext context, V1.FoodProperties properties, double celsius, FieldPath path)
    {
        if (properties.Given is { } given)
        {
            return new(Of(given), null, null);
        }

        var composition = properties.Composition;
        var at = path[V1.FoodProperties.CompositionFieldNumber];
        var sum = composition.WaterShare + composition.ProteinShare + composition.FatShare + composition.CarbohydrateShare + composition.AshShare;
        if (sum is < 0.9 or > 1.1)
        {
            context.Violations.Add(at.ToString(), RefusalReason.Conflict,
                FormattableString.Invariant($"The shares add up to {sum:0.###}; they must come to between 0.9 and 1.1. Fibre is within the carbohydrate."));
            return null;
        }

        if (composition.FibreShare > composition.CarbohydrateShare)
        {
            context.Violations.Add(at[V1.FoodComposition.FibreShareFieldNumber].ToString(), RefusalReason.Conflict,
                "Must not be more than the carbohydrate, which has the fibre in it.");
            return null;
        }

        var (found, series, parallel) = Maths.FoodComposition.Of(
            composition.WaterShare,
            composition.ProteinShare,
            composition.FatShare,
            composition.CarbohydrateShare - composition.FibreShare,
            composition.FibreShare,
            composition.AshShare,
            composition.AirVolumeShare).At(Math.Clamp(celsius, 0, 150));
        return new(found, series, parallel);
    }

    public static Maths.FoodProperties Of(ThermalProperties given) =>
        new(given.ConductivityWPerMK, given.DensityKgPerM3, given.SpecificHeatJPerKgK);
}

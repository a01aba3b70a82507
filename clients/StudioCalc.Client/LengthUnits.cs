using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Distances of the contract as lengths in any unit, feet with inches included.</summary>
public static class LengthUnits
{
    extension(FlashFill fill)
    {
        /// <summary>Distance from the flash to the plate; null when it is not set.</summary>
        public Length? Distance
        {
            get => fill.HasDistanceMm ? Length.FromMillimeters(fill.DistanceMm) : null;
            set
            {
                if (value is { } distance)
                {
                    fill.DistanceMm = distance.Millimeters;
                }
                else
                {
                    fill.ClearDistanceMm();
                }
            }
        }
    }

    extension(BalanceRemedy remedy)
    {
        /// <summary>The new distance from the flash to the plate; null when the remedy tells none.</summary>
        public Length? Distance => remedy.HasDistanceMm ? Length.FromMillimeters(remedy.DistanceMm) : null;
    }
}

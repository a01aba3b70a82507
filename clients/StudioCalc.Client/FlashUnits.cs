using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Energies of flash heads in any unit.</summary>
public static class FlashUnits
{
    extension(FlashUnit unit)
    {
        /// <summary>Stored energy at full power; null when it is not set.</summary>
        public Energy? FullEnergy
        {
            get => unit.HasFullEnergyJ ? UnitsNet.Energy.FromJoules(unit.FullEnergyJ) : null;
            set
            {
                if (value is { } given)
                {
                    unit.FullEnergyJ = given.Joules;
                }
                else
                {
                    unit.ClearFullEnergyJ();
                }
            }
        }
    }

    extension(EstimateRecyclingRequest request)
    {
        /// <summary>Stored energy at full power; null when it is not set.</summary>
        public Energy? FullEnergy
        {
            get => request.HasFullEnergyJ ? UnitsNet.Energy.FromJoules(request.FullEnergyJ) : null;
            set
            {
                if (value is { } given)
                {
                    request.FullEnergyJ = given.Joules;
                }
                else
                {
                    request.ClearFullEnergyJ();
                }
            }
        }
    }
}

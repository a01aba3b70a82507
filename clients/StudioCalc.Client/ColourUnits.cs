using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Colour temperatures in any unit.</summary>
public static class ColourUnits
{
    extension(MatchColourRequest request)
    {
        /// <summary>Correlated colour temperature of the light to change; null when it is not set.</summary>
        public Temperature? From
        {
            get => request.HasFromK ? UnitsNet.Temperature.FromKelvins(request.FromK) : null;
            set
            {
                if (value is { } given)
                {
                    request.FromK = given.Kelvins;
                }
                else
                {
                    request.ClearFromK();
                }
            }
        }

        /// <summary>Correlated colour temperature that the light should have; null when it is not set.</summary>
        public Temperature? To
        {
            get => request.HasToK ? UnitsNet.Temperature.FromKelvins(request.ToK) : null;
            set
            {
                if (value is { } given)
                {
                    request.ToK = given.Kelvins;
                }
                else
                {
                    request.ClearToK();
                }
            }
        }
    }
}

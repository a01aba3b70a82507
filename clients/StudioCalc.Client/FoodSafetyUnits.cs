using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Temperatures of food and room in any unit, for the check of food safety.</summary>
public static class FoodSafetyUnits
{
    extension(SafetySpell spell)
    {
        /// <summary>Temperature at the start; null when it is not set.</summary>
        public Temperature? Start
        {
            get => spell.HasStartCelsius ? UnitsNet.Temperature.FromDegreesCelsius(spell.StartCelsius) : null;
            set
            {
                if (value is { } given)
                {
                    spell.StartCelsius = given.DegreesCelsius;
                }
                else
                {
                    spell.ClearStartCelsius();
                }
            }
        }

        /// <summary>Temperature at the end; null when it is not set.</summary>
        public Temperature? End
        {
            get => spell.HasEndCelsius ? UnitsNet.Temperature.FromDegreesCelsius(spell.EndCelsius) : null;
            set
            {
                if (value is { } given)
                {
                    spell.EndCelsius = given.DegreesCelsius;
                }
                else
                {
                    spell.ClearEndCelsius();
                }
            }
        }
    }

    extension(CheckFoodSafetyRequest request)
    {
        /// <summary>Temperature of the room; null when it is not set.</summary>
        public Temperature? Air
        {
            get => request.HasAirCelsius ? UnitsNet.Temperature.FromDegreesCelsius(request.AirCelsius) : null;
            set
            {
                if (value is { } given)
                {
                    request.AirCelsius = given.DegreesCelsius;
                }
                else
                {
                    request.ClearAirCelsius();
                }
            }
        }
    }
}

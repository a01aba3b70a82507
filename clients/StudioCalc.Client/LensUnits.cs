using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Angles of the lens in any unit.</summary>
public static class LensUnits
{
    extension(LensTransmission transmission)
    {
        /// <summary>Angle of the place off the lens's axis; null when it is not set.</summary>
        public Angle? Angle
        {
            get => transmission.HasAngleDeg ? UnitsNet.Angle.FromDegrees(transmission.AngleDeg) : null;
            set
            {
                if (value is { } given)
                {
                    transmission.AngleDeg = given.Degrees;
                }
                else
                {
                    transmission.ClearAngleDeg();
                }
            }
        }
    }
}

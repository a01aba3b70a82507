using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Motion across the picture in any unit.</summary>
public static class MotionUnits
{
    extension(Motion motion)
    {
        /// <summary>Speed of the subject across the line of sight; null when it is not set.</summary>
        public Speed? Speed
        {
            get => motion.HasSpeedMPerS ? UnitsNet.Speed.FromMetersPerSecond(motion.SpeedMPerS) : null;
            set
            {
                if (value is { } given)
                {
                    motion.SpeedMPerS = given.MetersPerSecond;
                }
                else
                {
                    motion.ClearSpeedMPerS();
                }
            }
        }

        /// <summary>Permitted blur on the sensor; null when it is not set.</summary>
        public Length? PermittedBlur
        {
            get => motion.HasPermittedBlurUm ? UnitsNet.Length.FromMicrometers(motion.PermittedBlurUm) : null;
            set
            {
                if (value is { } given)
                {
                    motion.PermittedBlurUm = given.Micrometers;
                }
                else
                {
                    motion.ClearPermittedBlurUm();
                }
            }
        }

        /// <summary>Angle between the motion and the sensor's plane; null when it is not set.</summary>
        public Angle? Angle
        {
            get => motion.HasAngleDeg ? UnitsNet.Angle.FromDegrees(motion.AngleDeg) : null;
            set
            {
                if (value is { } given)
                {
                    motion.AngleDeg = given.Degrees;
                }
                else
                {
                    motion.ClearAngleDeg();
                }
            }
        }
    }
}

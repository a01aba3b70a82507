using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Light of the contract as quantities in any unit.</summary>
public static class LightUnits
{
    extension(Reading)
    {
        /// <summary>Light that stays on, by its illuminance on a flat receptor.</summary>
        public static Reading Of(Illuminance illuminance) => new() { Continuous = new() { IlluminanceLx = illuminance.Lux } };

        /// <summary>Light that stays on, by the luminance of the subject.</summary>
        public static Reading Of(Luminance luminance) =>
            new() { Continuous = new() { LuminanceCdPerM2 = luminance.CandelasPerSquareMeter } };
    }

    extension(SettingsExposure exposure)
    {
        /// <summary>Illuminance that the settings suit.</summary>
        public Illuminance Illuminance => Illuminance.FromLux(exposure.IlluminanceLx);

        /// <summary>Luminance that the settings suit.</summary>
        public Luminance Luminance => Luminance.FromCandelasPerSquareMeter(exposure.LuminanceCdPerM2);
    }

    extension(ContinuousReading reading)
    {
        /// <summary>Illuminance on a flat receptor; null when it is not set.</summary>
        public Illuminance? Illuminance
        {
            get => reading.HasIlluminanceLx ? UnitsNet.Illuminance.FromLux(reading.IlluminanceLx) : null;
            set
            {
                if (value is { } given)
                {
                    reading.IlluminanceLx = given.Lux;
                }
                else
                {
                    reading.ClearIlluminanceLx();
                }
            }
        }

        /// <summary>Luminance of the subject; null when it is not set.</summary>
        public Luminance? Luminance
        {
            get => reading.HasLuminanceCdPerM2 ? UnitsNet.Luminance.FromCandelasPerSquareMeter(reading.LuminanceCdPerM2) : null;
            set
            {
                if (value is { } given)
                {
                    reading.LuminanceCdPerM2 = given.CandelasPerSquareMeter;
                }
                else
                {
                    reading.ClearLuminanceCdPerM2();
                }
            }
        }
    }
}

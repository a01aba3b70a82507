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
}

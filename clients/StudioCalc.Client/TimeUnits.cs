using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Shutter speeds of the contract as times in any unit.</summary>
public static class TimeUnits
{
    extension(ShutterSpeed)
    {
        /// <summary>The exposure time taken literally.</summary>
        public static ShutterSpeed Of(Duration time) => new() { TimeS = time.Seconds };

        /// <summary>The exposure time taken literally. A <see cref="TimeSpan"/> counts steps of 100 ns, so that short third stops
        /// lose their exact value; marks and <see cref="Duration"/> do not.</summary>
        public static ShutterSpeed Of(TimeSpan time) => new() { TimeS = time.TotalSeconds };
    }

    extension(ShutterSpeedAnswer answer)
    {
        /// <summary>The exact exposure time.</summary>
        public Duration Time => Duration.FromSeconds(answer.TimeS);
    }
}

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

    extension(ShutterSpeed speed)
    {
        /// <summary>The exposure time that is taken literally; null when it is not set.</summary>
        public Duration? Time
        {
            get => speed.HasTimeS ? UnitsNet.Duration.FromSeconds(speed.TimeS) : null;
            set
            {
                if (value is { } given)
                {
                    speed.TimeS = given.Seconds;
                }
                else
                {
                    speed.ClearTimeS();
                }
            }
        }
    }

    extension(FreezeMotionRequest request)
    {
        /// <summary>Duration of the flash; null when it is not set.</summary>
        public Duration? FlashDuration
        {
            get => request.HasFlashDurationS ? UnitsNet.Duration.FromSeconds(request.FlashDurationS) : null;
            set
            {
                if (value is { } given)
                {
                    request.FlashDurationS = given.Seconds;
                }
                else
                {
                    request.ClearFlashDurationS();
                }
            }
        }
    }

    extension(EstimateRecyclingRequest request)
    {
        /// <summary>Time to recycle after a full-power flash; null when it is not set.</summary>
        public Duration? RecycleTime
        {
            get => request.HasRecycleTimeS ? UnitsNet.Duration.FromSeconds(request.RecycleTimeS) : null;
            set
            {
                if (value is { } given)
                {
                    request.RecycleTimeS = given.Seconds;
                }
                else
                {
                    request.ClearRecycleTimeS();
                }
            }
        }

        /// <summary>The shortest time between two flashes at any power; null when it is not set.</summary>
        public Duration? ShortestRecycle
        {
            get => request.HasShortestRecycleS ? UnitsNet.Duration.FromSeconds(request.ShortestRecycleS) : null;
            set
            {
                if (value is { } given)
                {
                    request.ShortestRecycleS = given.Seconds;
                }
                else
                {
                    request.ClearShortestRecycleS();
                }
            }
        }

        /// <summary>Time between frames that is wanted; null when it is not set.</summary>
        public Duration? WantedInterval
        {
            get => request.HasWantedIntervalS ? UnitsNet.Duration.FromSeconds(request.WantedIntervalS) : null;
            set
            {
                if (value is { } given)
                {
                    request.WantedIntervalS = given.Seconds;
                }
                else
                {
                    request.ClearWantedIntervalS();
                }
            }
        }
    }
}

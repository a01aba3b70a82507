using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Times of freshness budgets in any unit.</summary>
public static class BudgetUnits
{
    extension(FrameSeries frames)
    {
        /// <summary>Time from frame to frame; null when it is not set.</summary>
        public Duration? Interval
        {
            get => frames.HasIntervalS ? UnitsNet.Duration.FromSeconds(frames.IntervalS) : null;
            set
            {
                if (value is { } given)
                {
                    frames.IntervalS = given.Seconds;
                }
                else
                {
                    frames.ClearIntervalS();
                }
            }
        }
    }

    extension(ComponentBudget component)
    {
        /// <summary>What is left when it is last needed; null where its look does not end.</summary>
        public Duration? Slack => component.HasSlackS ? UnitsNet.Duration.FromSeconds(component.SlackS) : null;

        /// <summary>The latest that its clock may start, from the start of the first step.</summary>
        public Duration LatestStart => Duration.FromSeconds(component.LatestStartS);

        /// <summary>The earliest that its clock may start; null where nothing bounds it.</summary>
        public Duration? EarliestStart => component.HasEarliestStartS ? UnitsNet.Duration.FromSeconds(component.EarliestStartS) : null;
    }
}

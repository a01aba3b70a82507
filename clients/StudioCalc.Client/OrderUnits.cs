using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client;

/// <summary>Times of orders and new plans in any unit. Those with a sign are positive for time left, or for later.</summary>
public static class OrderUnits
{
    extension(ShootOrder order)
    {
        /// <summary>By how much budgets are broken in all.</summary>
        public Duration BudgetExcess => Duration.FromSeconds(order.BudgetExcessS);
    }

    extension(TimedBudget budget)
    {
        /// <summary>What is left at the last frame; null where its look does not end.</summary>
        public Duration? Slack => budget.HasSlackS ? UnitsNet.Duration.FromSeconds(budget.SlackS) : null;
    }

    extension(OrderNotReached missed)
    {
        /// <summary>By how much budgets are broken in the nearest order; null where there is none.</summary>
        public Duration? Shortfall => missed.HasShortfallS ? UnitsNet.Duration.FromSeconds(missed.ShortfallS) : null;
    }

    extension(ReplanShootResponse plan)
    {
        /// <summary>How much later the day ends than in the order so far.</summary>
        public Duration Later => Duration.FromSeconds(plan.LaterS);
    }

    extension(FireNow fire)
    {
        /// <summary>How long until then.</summary>
        public Duration Until => Duration.FromSeconds(fire.InS);

        /// <summary>How much later that is than by the order so far; null where that had no place for it.</summary>
        public Duration? Later => fire.HasLaterS ? UnitsNet.Duration.FromSeconds(fire.LaterS) : null;
    }

    extension(PlateOut plate)
    {
        /// <summary>How long its tightest component has left; null where nothing binds it.</summary>
        public Duration? Left => plate.HasLeftS ? UnitsNet.Duration.FromSeconds(plate.LeftS) : null;

        /// <summary>How long it is until its last frame; null where nothing binds it.</summary>
        public Duration? Needed => plate.HasNeededS ? UnitsNet.Duration.FromSeconds(plate.NeededS) : null;
    }
}

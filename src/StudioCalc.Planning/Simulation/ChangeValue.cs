namespace StudioCalc.Planning;

/// <summary>What one change of a day buys, replication by replication on the same draws.</summary>
/// <remarks>
/// <code>
/// D = finish before - finish after        saved in ms, in each replication       (102)
/// se = deviation of D / sqrt(n)                                                  (103)
/// </code>
/// <para>Both days are in an order of their own, and their blocks, plates and shots stand at the same indices: then the same draws meet the
/// same work, and se is far smaller than that of two separate runs. Source: common random numbers, standard texts.</para>
/// </remarks>
/// <param name="SavedMs">What is saved. [ms]</param>
/// <param name="MeanSavedMs">Its mean. [ms]</param>
/// <param name="ErrorMs">The standard error of the mean. [ms] (103)</param>
public sealed record ChangeValue(Percentiles SavedMs, double MeanSavedMs, double ErrorMs)
{
    // The 97.5th percentile of the normal distribution.
    private const double Deviations = 1.959963984540054;

    /// <summary>The 95 % interval of the mean. [ms]</summary>
    public (double LowMs, double HighMs) Interval => (MeanSavedMs - Deviations * ErrorMs, MeanSavedMs + Deviations * ErrorMs);

    /// <summary>Compares two simulations of as many replications with the same seed.</summary>
    /// <param name="before">The day as it is.</param>
    /// <param name="after">The changed day, in its own order.</param>
    public static ChangeValue Of(DaySimulation before, DaySimulation after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (before.Replications != after.Replications)
        {
            throw new ArgumentException("Must have as many replications as the other.", nameof(after));
        }

        var saved = before.FinishesMs.Zip(after.FinishesMs, (a, b) => a - b).ToArray();
        var mean = (double)saved.Sum() / saved.Length;
        var variance = saved.Sum(d => (d - mean) * (d - mean)) / Math.Max(1, saved.Length - 1);
        return new(Percentiles.Of(saved), mean, Math.Sqrt(variance / saved.Length));
    }

    /// <summary>Orders the changed day anew and simulates it on the draws of the day as it is.</summary>
    /// <param name="before">The day as it is, simulated.</param>
    /// <param name="changed">The changed day: blocks, plates and shots at the same indices.</param>
    /// <param name="policy">When the kitchen fires.</param>
    /// <param name="uncertainty">What of the changed day is not certain.</param>
    /// <param name="effort">How hard to search for its order.</param>
    /// <param name="cores">The most cores to use; the result does not depend on it.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static ChangeValue AfterReordering(
        DaySimulation before,
        ShootDay changed,
        FiringPolicy policy,
        DayUncertainty uncertainty,
        OrderEffort effort,
        int cores,
        CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(before);
        var input = DaySimulationInput.Ordered(changed, policy, uncertainty, effort, cancellation);
        return Of(before, DaySimulation.Run(input, before.Replications, before.Seed, cores, cancellation));
    }
}

using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>How long a day takes that is known by its number of dishes, by random draws.</summary>
/// <remarks>
/// <code>
/// T(n) = load-in + first setup + D1 + ... + Dn + breaks + strike                       (80)
/// D = [change] + wait + for every shot (swap + tries + new plates + approval)          (81)
/// breaks = floor(work / hours between breaks) breaks                                   (82)
/// contingency = P90(T) - P50(T)                                                        (83)
/// fit = largest n with P90(T(n)) &lt;= H                                                 (84)
/// </code>
/// <para>The set is taken as what everything waits for: whoever knows kitchen and order simulates the day. Percentiles are those of the
/// sum: percentiles of the parts do not add. A shot goes through tries until one gives a keeper; after the most tries a new plate is
/// waited for, at most <see cref="MostPlates"/> plates. Draws are addressed by replication, dish, stage and try, so that a day with one more
/// dish holds the same dishes as before. Source: definitions.</para>
/// </remarks>
public sealed record Quote
{
    /// <summary>The most plates of a shot.</summary>
    public const int MostPlates = 8;

    /// <summary>The most dishes that are looked at for a fit.</summary>
    public const int MostDishes = 200;

    private const uint Key = 2;

    /// <summary>The length of the day. [ms]</summary>
    public required Percentiles LengthMs { get; init; }

    /// <summary>Its mean. [ms]</summary>
    public required double MeanMs { get; init; }

    /// <summary>What a promise at P90 holds over the likely day. [ms] (83)</summary>
    public long ContingencyMs => LengthMs.P90.Value - LengthMs.P50.Value;

    /// <summary>Dishes that fit the asked day with nine chances in ten, at most <see cref="MostDishes"/>; null when not asked. (84)</summary>
    public required int? DishesThatFit { get; init; }

    /// <summary>What the weakest estimate rests on.</summary>
    public required Basis Basis { get; init; }

    /// <summary>Draws a day.</summary>
    /// <param name="input">The day.</param>
    /// <param name="replications">Number of draws, 1 or more.</param>
    /// <param name="seed">The seed: the same one gives the same draws.</param>
    /// <param name="cores">The most cores to use; the result does not depend on it.</param>
    /// <param name="cancellation">Stops the draws.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Quote Draw(QuoteInput input, int replications, uint seed, int cores, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentOutOfRangeException.ThrowIfLessThan(replications, 1);
        Guard.Positive(input.Dishes);
        Guard.Positive(Binomial.Share(input.KeeperChance.Value));
        var draws = new QuoteDraws(input, (seed, Key));
        var (setOut, breaks, work, length) = (new long[replications], new long[replications], new long[replications], new long[replications]);
        Replications.Run(replications, cores, r => (setOut[r], breaks[r]) = draws.Fixed((uint)r), cancellation);
        (Percentiles Length, double MeanMs)? asked = null;
        int? fit = null;
        for (var n = 1; asked is null || (input.DayHours is not null && fit is null); n++)
        {
            var dish = (uint)(n - 1);
            Replications.Run(
                replications,
                cores,
                r =>
                {
                    work[r] += draws.Dish((uint)r, dish);
                    length[r] = draws.Length(setOut[r] + work[r], breaks[r]);
                },
                cancellation);
            if (n == input.Dishes)
            {
                asked = (Percentiles.Of(length), length.Average(static one => (double)one));
            }

            if (input.DayHours is { } hours && fit is null)
            {
                fit = Percentiles.Of(length).P90.Value > hours * 3_600_000 ? n - 1 : n == MostDishes ? n : null;
            }
        }

        return new() { LengthMs = asked.Value.Length, MeanMs = asked.Value.MeanMs, DishesThatFit = fit, Basis = input.Basis };
    }
}

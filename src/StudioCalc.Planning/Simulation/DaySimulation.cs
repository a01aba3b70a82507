namespace StudioCalc.Planning;

/// <summary>A resource in a simulated day.</summary>
/// <param name="UtilisationShare">Share of the day that it works, on average over its units.</param>
/// <param name="BindingShare">Share of the replications in which the way back from the finish waited for it.</param>
/// <param name="PathShare">Share of the time on that way that is its work.</param>
public sealed record SimulatedResource(double UtilisationShare, double BindingShare, double PathShare);

/// <summary>A block in a simulated day.</summary>
/// <param name="Broken">Replications in which a budget of it broke.</param>
/// <param name="MadeAgain">How often its plates were made again, in all replications together.</param>
/// <param name="GivenUp">Shots of it that were given up, in all replications together.</param>
/// <param name="MeanWaitMs">How long a plate of it waited on the set, on average. [ms]</param>
public sealed record SimulatedBlock(int Broken, int MadeAgain, int GivenUp, double MeanWaitMs)
{
    /// <summary>Standard error of the share of broken replications, above 0 even for none and all.</summary>
    /// <param name="replications">Number of replications, 1 or more.</param>
    public double BrokenError(int replications)
    {
        var p = (Broken + 1.0) / (replications + 2);
        return Math.Sqrt(p * (1 - p) / replications);
    }
}

/// <summary>A planned day, run through many times with random times and keepers.</summary>
/// <remarks>
/// <code>
/// rate = sum of finished shots / sum of finishes                                   (100)
/// utilisation = sum of work / (units x sum of finishes)                            (101)
/// </code>
/// <para>The kitchen takes plates in the order of the day. A stage starts when it is released, by the clock or on call, when what comes before
/// it is done and when its resource is free. A shot is tried until it has its keepers. It fails when the most tries give none, or when a
/// budget that ends with it breaks: the photographer stops when the look ends. What failed is shot again at the end of the order, with new plates that are called for as in
/// <see cref="FiringPolicy.Call"/> and a setup of its own, up to the most plates; then it is given up. Frames, keepers and finished shots are
/// counted apart. Work that no opening of its resource holds is done after the last and counts as over hours; a shot whose own openings are
/// past is missed. (100) divides sums, as the mean of rates is too high.</para>
/// <para>What binds the day is found on the same draws with a kitchen that fires as early as it can and without budgets: from the last work
/// back over what each waited for. Draws are addressed by replication, block, plate or shot, round, stage and try; all sums are of whole
/// numbers, so the result does not depend on the cores. Source: definitions; criticality after Van Slyke (1963), from memory.</para>
/// </remarks>
public sealed record DaySimulation
{
    // What binds is a share, and a coarse one is enough.
    private const int MostWalks = 2000;

    /// <summary>Number of replications.</summary>
    public required int Replications { get; init; }

    /// <summary>The seed.</summary>
    public required uint Seed { get; init; }

    /// <summary>The finish. [ms]</summary>
    public required Percentiles FinishMs { get; init; }

    /// <summary>The mean finish. [ms]</summary>
    public double MeanFinishMs => FinishesMs.Average(static one => (double)one);

    /// <summary>Finished shots an hour, in thousandths.</summary>
    public required Percentiles FinishedPerHourThousandths { get; init; }

    /// <summary>Finished shots an hour in the long run. (100)</summary>
    public required double FinishedPerHour { get; init; }

    /// <summary>Keepers an hour in the long run.</summary>
    public required double KeepersPerHour { get; init; }

    /// <summary>Frames an hour in the long run.</summary>
    public required double FramesPerHour { get; init; }

    /// <summary>Finished shots of a day, on average.</summary>
    public required double MeanFinished { get; init; }

    /// <summary>Shots missed as their own openings were past, on average.</summary>
    public required double MeanMissed { get; init; }

    /// <summary>How long the set, made ready and open for the shot, waits for plates, on average. [ms]</summary>
    public required double MeanIdleMs { get; init; }

    /// <summary>Replications in which work was done after the hours of its resource.</summary>
    public required int OverHours { get; init; }

    /// <summary>The resources, in the order of the day.</summary>
    public required IReadOnlyList<SimulatedResource> Resources { get; init; }

    /// <summary>The blocks, in the order of the day's list.</summary>
    public required IReadOnlyList<SimulatedBlock> Blocks { get; init; }

    /// <summary>Share of the time on the way to the finish that no resource works: lags, resting, carrying by nobody.</summary>
    public required double PathShareOfNobody { get; init; }

    /// <summary>The resource whose work makes most of the way to the finish, the first of equals.</summary>
    public int Bottleneck => Resources.Select((one, i) => (one.PathShare, i)).OrderByDescending(one => one.PathShare).ThenBy(one => one.i).First().i;

    internal long[] FinishesMs { get; init; } = [];

    /// <summary>The chance of what happened so often, and its standard error, above 0 for none and all.</summary>
    public (double Chance, double Error) Chance(int count)
    {
        var p = (count + 1.0) / (Replications + 2);
        return ((double)count / Replications, Math.Sqrt(p * (1 - p) / Replications));
    }

    /// <summary>Runs a day.</summary>
    /// <param name="input">The day.</param>
    /// <param name="replications">How many times, 1 or more.</param>
    /// <param name="seed">The seed: the same one gives the same draws.</param>
    /// <param name="cores">The most cores to use; the result does not depend on it.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="ArgumentException">The day has begun, or a block has more than 64 shots.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static DaySimulation Run(DaySimulationInput input, int replications, uint seed, int cores, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentOutOfRangeException.ThrowIfLessThan(replications, 1);
        if (input.Day.Progress is not null || input.Day.Blocks.Any(block => block.Shots.Count > ModelBlock.MostShots))
        {
            throw new ArgumentException("Must be a day of which nothing has begun, with blocks of at most 64 shots.", nameof(input));
        }

        var model = new DayModel(input);
        var (finish, rate) = (new long[replications], new long[replications]);
        var sum = new DayTally(model.Resources.Length, model.Blocks.Length);
        foreach (var run in Planning.Replications.Run(
            replications,
            cores,
            () => new DayRun(model, seed, freely: false),
            (run, r) =>
            {
                run.Run((uint)r);
                finish[r] = run.Result.FinishMs;
                rate[r] = run.Result.FinishMs == 0 ? 0 : run.Result.Finished * 3_600_000_000L / run.Result.FinishMs;
            },
            cancellation))
        {
            sum.Add(run.Tally);
        }

        var walks = new DayTally(model.Resources.Length, model.Blocks.Length);
        var walked = Math.Min(replications, MostWalks);
        foreach (var run in Planning.Replications.Run(
            walked, cores, () => new DayRun(model, seed, freely: true), (run, r) => run.Run((uint)r), cancellation))
        {
            walks.Add(run.Tally);
        }

        double PerHour(long count) => sum.FinishMs == 0 ? 0 : count * 3_600_000.0 / sum.FinishMs;
        var path = Math.Max(1, walks.PathMs.Sum());
        return new()
        {
            Replications = replications,
            Seed = seed,
            FinishesMs = finish,
            FinishMs = Percentiles.Of(finish),
            FinishedPerHourThousandths = Percentiles.Of(rate),
            FinishedPerHour = PerHour(sum.Finished),
            KeepersPerHour = PerHour(sum.Keepers),
            FramesPerHour = PerHour(sum.Frames),
            MeanFinished = (double)sum.Finished / replications,
            MeanMissed = (double)sum.Missed / replications,
            MeanIdleMs = (double)sum.IdleMs / replications,
            OverHours = sum.Over,
            PathShareOfNobody = (double)walks.PathMs[^1] / path,
            Resources =
            [
                .. model.Resources.Select((resource, i) => new SimulatedResource(
                    sum.FinishMs == 0 ? 0 : (double)sum.BusyMs[i] / sum.FinishMs / resource.Capacity,
                    (double)walks.Binding[i] / walked,
                    (double)walks.PathMs[i] / path)),
            ],
            Blocks =
            [
                .. model.Blocks.Select((_, b) => new SimulatedBlock(
                    sum.Broken[b], sum.MadeAgain[b], sum.GivenUp[b], sum.Waits[b] == 0 ? 0 : (double)sum.WaitMs[b] / sum.Waits[b])),
            ],
        };
    }
}

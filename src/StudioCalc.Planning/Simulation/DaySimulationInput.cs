using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>When the kitchen fires a plate, and goes on with it.</summary>
public enum FiringPolicy
{
    /// <summary>At the planned times, whatever happens on the set.</summary>
    Clock,

    /// <summary>When the photographer calls: as soon as what is left to do on the set, by the plan, is the planned lead.</summary>
    Call,
}

/// <summary>The tries of a shot.</summary>
public sealed record ShotOdds
{
    /// <summary>Chance that a try gives a keeper, above 0 and not above 1.</summary>
    public required double KeeperChance { get; init; }

    /// <summary>Keepers that finish the shot, 1 or more.</summary>
    public int Keepers { get; init; } = 1;

    /// <summary>Tries after which a new plate is called for, 1 or more.</summary>
    public required int MostTries { get; init; }

    /// <summary>Frames of a try, 1 or more.</summary>
    public int FramesPerTry { get; init; } = 1;

    /// <summary>Time of a try; none: the time of the shot.</summary>
    public ThreePoint? Try { get; init; }
}

/// <summary>What of a day is not certain.</summary>
public sealed record DayUncertainty
{
    /// <summary>Times of stages, shots and approvals; what is not named takes the time of the plan.</summary>
    public IReadOnlyDictionary<Operation, ThreePoint> Times { get; init; } = new Dictionary<Operation, ThreePoint>();

    /// <summary>Tries of shots, by their <see cref="OperationKind.Shoot"/>; a shot that is not named is finished with one.</summary>
    public IReadOnlyDictionary<Operation, ShotOdds> Odds { get; init; } = new Dictionary<Operation, ShotOdds>();

    /// <summary>Setups as multiples of those of the plan; none: they take what is planned.</summary>
    public ThreePoint? SetupFactor { get; init; }

    /// <summary>How often the plates of a block may be made, the first time included, from 1 to 16.</summary>
    public int MostPlates { get; init; } = 2;
}

/// <summary>A planned day to be simulated.</summary>
public sealed record DaySimulationInput
{
    /// <summary>The day; nothing of it has begun.</summary>
    public required ShootDay Day { get; init; }

    /// <summary>Its order, as indices of its blocks.</summary>
    public required IReadOnlyList<int> Order { get; init; }

    /// <summary>Its planned times: the first stages of the plates are its fire times, and no stage starts before its time,
    /// moved with the call where the kitchen waits for that.</summary>
    public required IReadOnlyList<TimedOperation> Planned { get; init; }

    /// <summary>When the kitchen fires.</summary>
    public FiringPolicy Policy { get; init; } = FiringPolicy.Clock;

    /// <summary>What is not certain.</summary>
    public DayUncertainty Uncertainty { get; init; } = new();

    /// <summary>A day in its best order that was found.</summary>
    /// <param name="day">The day.</param>
    /// <param name="policy">When the kitchen fires.</param>
    /// <param name="uncertainty">What is not certain.</param>
    /// <param name="effort">How hard to search for the order.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static DaySimulationInput Ordered(
        ShootDay day, FiringPolicy policy, DayUncertainty uncertainty, OrderEffort effort, CancellationToken cancellation) =>
        Of(day, ShootOrder.Find(day, effort, cancellation).Schedule, policy, uncertainty);

    /// <summary>A day with its schedule.</summary>
    /// <param name="day">The day.</param>
    /// <param name="schedule">Its schedule: what finds no place in it is not simulated.</param>
    /// <param name="policy">When the kitchen fires.</param>
    /// <param name="uncertainty">What is not certain.</param>
    public static DaySimulationInput Of(ShootDay day, Schedule schedule, FiringPolicy policy, DayUncertainty uncertainty)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        return new() { Day = day, Order = schedule.Order, Planned = schedule.Latest, Policy = policy, Uncertainty = uncertainty };
    }
}

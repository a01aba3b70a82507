using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How a clock of food safety stands. None of them says that food is safe; the later, the stricter.</summary>
public enum SafetyState
{
    /// <summary>Time is left before the limit.</summary>
    Running,

    /// <summary>It cannot be told by this regime.</summary>
    Unknown,

    /// <summary>The limit is reached.</summary>
    Over,
}

/// <summary>Why a clock stands as it does, or has another limit than the usual one.</summary>
public enum SafetyReason
{
    /// <summary>The regime holds for food that starts hotter or colder.</summary>
    OtherStart,

    /// <summary>The regime holds for some food only, and this is not told to be such food.</summary>
    FoodNotTold,

    /// <summary>The food came down in time and was warmed again.</summary>
    WarmedAgain,

    /// <summary>The food was warmer than is ever permitted.</summary>
    TooWarm,

    /// <summary>There was more than one period.</summary>
    SecondPeriod,

    /// <summary>The written procedure is not in force.</summary>
    NoWrittenProcedure,

    /// <summary>The shorter limit of a hot room applies.</summary>
    HotRoom,

    /// <summary>The temperature of the room is not told, and the usual limit is taken.</summary>
    RoomNotTold,

    /// <summary>The food came down in time, and the clock has stopped.</summary>
    Cooled,
}

/// <summary>What is known of food on a set, beside its temperatures.</summary>
/// <param name="RoomCelsius">Temperature of the room; null if it is not told. [°C]</param>
/// <param name="HasWrittenProcedure">Whether a written procedure for time as a control is in force.</param>
/// <param name="Food">What the food is told to be.</param>
public sealed record SafetyFacts(double? RoomCelsius, bool HasWrittenProcedure, IReadOnlyCollection<SafetyFood> Food);

/// <summary>How a clock stands.</summary>
/// <param name="Regime">The limit it is of.</param>
/// <param name="State">How it stands.</param>
/// <param name="Reasons">Why.</param>
/// <param name="CountedS">Time that counts; null when the state is unknown. [s]</param>
/// <param name="LimitS">The limit that applies. [s]</param>
public sealed record SafetyClock(
    SafetyRegime Regime, SafetyState State, IReadOnlyList<SafetyReason> Reasons, double? CountedS, double LimitS)
{
    /// <summary>What is left before the limit; null when the state is unknown. [s]</summary>
    public double? LeftS => State == SafetyState.Over ? 0 : Left(LimitS);

    /// <summary>What is left in which the food may go back into the cold; null where that is no less, or unknown. [s]</summary>
    public double? LeftToChillS => Regime.ChillLimitS is not { } limit ? null : State == SafetyState.Over ? 0 : Left(limit);

    /// <summary>What to do, in the regime's sense; empty when the state is unknown.</summary>
    public string Action => State switch
    {
        SafetyState.Over => Regime.ActionOver,
        SafetyState.Running when LeftToChillS is 0 => Regime.ActionLate!,
        SafetyState.Running => Regime.ActionRunning,
        _ => "",
    };

    private double? Left(double limit) => CountedS is { } counted ? Max(0, limit - counted) : null;
}

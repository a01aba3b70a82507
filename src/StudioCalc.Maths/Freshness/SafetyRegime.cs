namespace StudioCalc.Maths;

/// <summary>What a regime of food safety counts.</summary>
public enum SafetyCount
{
    /// <summary>Time between two temperatures, summed up.</summary>
    TimeBetween,

    /// <summary>All time since the food was first between two temperatures.</summary>
    TimeSinceBetween,

    /// <summary>All time.</summary>
    AllTime,

    /// <summary>Time from one temperature down to another.</summary>
    CoolingFrom,

    /// <summary>Time from the start down to a temperature.</summary>
    CoolingFromStart,
}

/// <summary>What food is, where a regime holds for some food only.</summary>
public enum SafetyFood
{
    /// <summary>Cut produce or opened sealed food at room temperature.</summary>
    CutOrOpened,

    /// <summary>A roast, cooked as the code asks.</summary>
    Roast,

    /// <summary>Made of ingredients at room temperature.</summary>
    OfRoomTemperature,
}

/// <summary>A limit of a published regime of food safety.</summary>
/// <param name="Id">Its own id.</param>
/// <param name="RegimeId">The regime that it belongs to.</param>
/// <param name="Name">Its name.</param>
/// <param name="Jurisdiction">Where it holds.</param>
/// <param name="IsTimeLimit">Whether it limits the time of food that has left the control of heat or cold, and so may be taken when no
/// regime is named. Holding and cooling rules do not.</param>
/// <param name="Count">What it counts.</param>
/// <param name="AboveCelsius">Time counts above this, or the food must come down to it. [°C]</param>
/// <param name="BelowCelsius">Time counts below this. [°C]</param>
/// <param name="LimitS">The limit; at it the clock is over. [s]</param>
/// <param name="HotRoom">A shorter limit in a hot room.</param>
/// <param name="WithoutProcedureS">The limit where its written procedure is not in force; null where it needs none. [s]</param>
/// <param name="StartAtMostCelsius">It holds for food that starts at most so warm. [°C]</param>
/// <param name="StartAtLeastCelsius">It holds for food that starts at least so hot; with both given either will do. [°C]</param>
/// <param name="NeverAboveCelsius">Food that was ever warmer is over. [°C]</param>
/// <param name="IsOncePeriod">Whether it permits one period only.</param>
/// <param name="Food">The food it holds for; null for any.</param>
/// <param name="ChillLimitS">Until when the food may go back into the cold, where that ends before the limit. [s]</param>
/// <param name="ActionRunning">What to do while it runs.</param>
/// <param name="ActionLate">What to do when it may not go back into the cold any more.</param>
/// <param name="ActionOver">What to do when it is over.</param>
/// <param name="SourceKind">How it is known.</param>
/// <param name="Source">Where it is from.</param>
public sealed record SafetyRegime(
    string Id,
    string RegimeId,
    string Name,
    string Jurisdiction,
    bool IsTimeLimit,
    SafetyCount Count,
    double? AboveCelsius,
    double? BelowCelsius,
    double LimitS,
    HotRoomLimit? HotRoom,
    double? WithoutProcedureS,
    double? StartAtMostCelsius,
    double? StartAtLeastCelsius,
    double? NeverAboveCelsius,
    bool IsOncePeriod,
    SafetyFood? Food,
    double? ChillLimitS,
    string ActionRunning,
    string? ActionLate,
    string ActionOver,
    SourceKind SourceKind,
    string Source);

/// <summary>A shorter limit in a hot room.</summary>
/// <param name="AboveCelsius">Above this temperature of the room. [°C]</param>
/// <param name="LimitS">The limit. [s]</param>
public sealed record HotRoomLimit(double AboveCelsius, double LimitS);

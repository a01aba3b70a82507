namespace StudioCalc.Maths;

/// <summary>What starts the clock of a component.</summary>
public enum ClockStart
{
    /// <summary>It leaves the heat.</summary>
    OffHeat,

    /// <summary>It leaves the freezer or the fridge.</summary>
    OutOfCold,

    /// <summary>It is poured or foamed.</summary>
    Poured,

    /// <summary>It is cut.</summary>
    Cut,

    /// <summary>It is laid on the food.</summary>
    Garnished,

    /// <summary>It is dressed or sauced.</summary>
    Dressed,

    /// <summary>Its cover is lifted.</summary>
    Uncovered,
}

/// <summary>The model behind a holding time.</summary>
public enum HoldingModel
{
    /// <summary>A window taken as it is.</summary>
    FixedWindow,

    /// <summary>A well-mixed liquid.</summary>
    WellMixedLiquid,

    /// <summary>A thin film on a plate.</summary>
    FilmOnPlate,

    /// <summary>A solid piece by series.</summary>
    SolidSeries,

    /// <summary>A solid piece in layers.</summary>
    SolidNumeric,

    /// <summary>Food and plate as two nodes.</summary>
    FoodAndPlate,

    /// <summary>Ice cream.</summary>
    IceCream,

    /// <summary>Condensation on a cold glass.</summary>
    Condensation,

    /// <summary>First-order decay.</summary>
    FirstOrder,

    /// <summary>Heat damage of leaves.</summary>
    LeafDamage,
}

/// <summary>How a row of a catalogue is known, the firmest first.</summary>
public enum SourceKind
{
    /// <summary>The request gives it.</summary>
    Given,

    /// <summary>A published standard.</summary>
    Standard,

    /// <summary>A handbook, a maker's sheet or a paper.</summary>
    Published,

    /// <summary>Computed from published figures.</summary>
    Computed,

    /// <summary>Common practice.</summary>
    Practice,

    /// <summary>From memory.</summary>
    Memory,
}

/// <summary>A time with its spread. [s]</summary>
/// <param name="PessimisticS">The shortest. [s]</param>
/// <param name="LikelyS">The likely one. [s]</param>
/// <param name="OptimisticS">The longest. [s]</param>
public readonly record struct HoldingSpan(double PessimisticS, double LikelyS, double OptimisticS);

/// <summary>A temperature with its spread. [°C]</summary>
/// <param name="PessimisticCelsius">The one that is passed first. [°C]</param>
/// <param name="LikelyCelsius">The likely one. [°C]</param>
/// <param name="OptimisticCelsius">The one that is passed last. [°C]</param>
public readonly record struct TemperatureBand(double PessimisticCelsius, double LikelyCelsius, double OptimisticCelsius);

/// <summary>A row of the catalogue: how long a kind of component holds, or at which temperature its look ends.</summary>
/// <param name="Id">What it is named by.</param>
/// <param name="Component">The kind of component.</param>
/// <param name="EndsBy">What ends its look.</param>
/// <param name="ClockStart">What starts its clock.</param>
/// <param name="Model">The model that uses it.</param>
/// <param name="Window">How long it holds. Only of fixed windows.</param>
/// <param name="SetPoint">Surface temperature at which its look ends. Only where a model computes the time.</param>
/// <param name="HalfLife">How long until half is left. Only of first-order decay.</param>
/// <param name="ShareLeft">Share that is left when its look ends. Only of first-order decay.</param>
/// <param name="SourceKind">How it is known: its weakest part counts.</param>
/// <param name="Source">Where it is from.</param>
/// <param name="IsWait">Whether it is a wait until the component looks right, not a time that its look lasts.</param>
public sealed record HoldingProfile(
    string Id,
    string Component,
    string EndsBy,
    ClockStart ClockStart,
    HoldingModel Model,
    HoldingSpan? Window,
    TemperatureBand? SetPoint,
    HoldingSpan? HalfLife,
    double? ShareLeft,
    SourceKind SourceKind,
    string Source,
    bool IsWait);

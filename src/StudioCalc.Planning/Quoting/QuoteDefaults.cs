using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>What a quote takes where nothing is told: assumptions, every one of them.</summary>
/// <remarks>Times are shortest, likely and longest, spread as beta-PERT. They describe one table, one photographer and a kitchen close by.
/// Source: common practice, no source, but for the first setup: half an hour, and ten minutes or more for a dish, are named by a food
/// photographer's article of 2024 (second-hand).</remarks>
public static class QuoteDefaults
{
    /// <summary>Carrying in and building up.</summary>
    public static TimeEstimate LoadIn { get; } = Minutes(30, 45, 75);

    /// <summary>The first setup: light, frame, tether and colour check.</summary>
    public static TimeEstimate FirstSetup { get; } = Minutes(20, 30, 60);

    /// <summary>Taking down.</summary>
    public static TimeEstimate Strike { get; } = Minutes(20, 30, 50);

    /// <summary>Changing angle, surface, background, lens or light between two dishes.</summary>
    public static TimeEstimate SetupChange { get; } = Minutes(6, 10, 20);

    /// <summary>Share of the dishes before which something is changed.</summary>
    public static NumberEstimate SetupShare { get; } = new(0.3, Basis.Assumption);

    /// <summary>How long the set waits for the kitchen before a dish.</summary>
    public static TimeEstimate PlateWait { get; } = Minutes(3, 8, 20);

    /// <summary>Stand-in out, fresh plate in, last touches: for every shot.</summary>
    public static TimeEstimate Swap { get; } = Minutes(1, 2, 4);

    /// <summary>One try: frames, a look at the screen, a touch-up.</summary>
    public static TimeEstimate Try { get; } = Minutes(0.75, 1.25, 2.5);

    /// <summary>Chance that a try gives a keeper.</summary>
    public static NumberEstimate KeeperChance { get; } = new(0.5, Basis.Assumption);

    /// <summary>Tries after which a new plate is called for.</summary>
    public static NumberEstimate MostTries { get; } = new(6, Basis.Assumption);

    /// <summary>Waiting for a new plate of a dish whose plate gave no keeper.</summary>
    public static TimeEstimate NewPlate { get; } = Minutes(8, 12, 20);

    /// <summary>Approval of a shot.</summary>
    public static TimeEstimate Approval { get; } = Minutes(0.5, 1.5, 5);

    /// <summary>One break.</summary>
    public static TimeEstimate Break { get; } = Minutes(30, 45, 60);

    /// <summary>Hours of work after which there is one break.</summary>
    public static NumberEstimate HoursBetweenBreaks { get; } = new(5, Basis.Assumption);

    private static TimeEstimate Minutes(double shortest, double likely, double longest) =>
        new(new(60 * shortest, 60 * likely, 60 * longest, Spread.Pert), Basis.Assumption);
}

namespace StudioCalc.Planning;

/// <summary>A day to be quoted: as little as a number of dishes.</summary>
public sealed record QuoteInput
{
    /// <summary>Dishes, 1 or more.</summary>
    public required int Dishes { get; init; }

    /// <summary>Shots of a dish, 1 or more.</summary>
    public int ShotsPerDish { get; init; } = 1;

    /// <summary>Hours of the day that the dishes should fit; null when that is not asked. [h]</summary>
    public double? DayHours { get; init; }

    /// <summary>Carrying in and building up.</summary>
    public TimeEstimate LoadIn { get; init; } = QuoteDefaults.LoadIn;

    /// <summary>The first setup.</summary>
    public TimeEstimate FirstSetup { get; init; } = QuoteDefaults.FirstSetup;

    /// <summary>Taking down.</summary>
    public TimeEstimate Strike { get; init; } = QuoteDefaults.Strike;

    /// <summary>A change of setup.</summary>
    public TimeEstimate SetupChange { get; init; } = QuoteDefaults.SetupChange;

    /// <summary>Share of the dishes before which the setup is changed, from 0 to 1.</summary>
    public NumberEstimate SetupShare { get; init; } = QuoteDefaults.SetupShare;

    /// <summary>How long the set waits for the kitchen before a dish.</summary>
    public TimeEstimate PlateWait { get; init; } = QuoteDefaults.PlateWait;

    /// <summary>Swap of plates for every shot.</summary>
    public TimeEstimate Swap { get; init; } = QuoteDefaults.Swap;

    /// <summary>One try.</summary>
    public TimeEstimate Try { get; init; } = QuoteDefaults.Try;

    /// <summary>Chance that a try gives a keeper, above 0 and not above 1.</summary>
    public NumberEstimate KeeperChance { get; init; } = QuoteDefaults.KeeperChance;

    /// <summary>Tries after which a new plate is called for, 1 or more.</summary>
    public NumberEstimate MostTries { get; init; } = QuoteDefaults.MostTries;

    /// <summary>Waiting for a new plate.</summary>
    public TimeEstimate NewPlate { get; init; } = QuoteDefaults.NewPlate;

    /// <summary>Approval of a shot.</summary>
    public TimeEstimate Approval { get; init; } = QuoteDefaults.Approval;

    /// <summary>One break.</summary>
    public TimeEstimate Break { get; init; } = QuoteDefaults.Break;

    /// <summary>Hours of work after which there is one break, above 0. [h]</summary>
    public NumberEstimate HoursBetweenBreaks { get; init; } = QuoteDefaults.HoursBetweenBreaks;

    /// <summary>The weakest of what all estimates rest on: that of the answer.</summary>
    public Basis Basis => Weakest(
        LoadIn.Basis, FirstSetup.Basis, Strike.Basis, SetupChange.Basis, SetupShare.Basis, PlateWait.Basis, Swap.Basis, Try.Basis,
        KeeperChance.Basis, MostTries.Basis, NewPlate.Basis, Approval.Basis, Break.Basis, HoursBetweenBreaks.Basis);

    private static Basis Weakest(params ReadOnlySpan<Basis> all)
    {
        var weakest = Basis.Measured;
        foreach (var one in all)
        {
            weakest = one < weakest ? one : weakest;
        }

        return weakest;
    }
}

namespace StudioCalc.Maths;

/// <summary>Something that helps where a ratio is not reached.</summary>
public enum BalanceRemedyKind
{
    /// <summary>Turn the flash up.</summary>
    RaiseFlashPower,

    /// <summary>Turn the flash down.</summary>
    LowerFlashPower,

    /// <summary>Move the flash nearer to the plate.</summary>
    MoveFlashCloser,

    /// <summary>Move the flash away from the plate.</summary>
    MoveFlashAway,

    /// <summary>Put diffusion or a neutral-density gel on the flash.</summary>
    DiffuseFlash,

    /// <summary>Dim the back light.</summary>
    DimBackLight,

    /// <summary>Brighten the back light.</summary>
    BrightenBackLight,

    /// <summary>Set a faster shutter speed.</summary>
    FasterShutterSpeed,

    /// <summary>Set a slower shutter speed.</summary>
    SlowerShutterSpeed,

    /// <summary>Raise the ISO.</summary>
    RaiseIso,

    /// <summary>Lower the ISO.</summary>
    LowerIso,

    /// <summary>Put a neutral-density filter on the lens.</summary>
    FilterLens,

    /// <summary>Take filters off the lens, as far as the loss in it comes from filters.</summary>
    UnfilterLens,
}

/// <summary>A remedy, and what comes of it.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="ChangeStops">Light gained by what it acts on. [stops]</param>
/// <param name="Input">The calculation's input with the remedy applied.</param>
/// <param name="Outcome">The calculation run again with it.</param>
public sealed record BalanceRemedy(BalanceRemedyKind Kind, double ChangeStops, BalanceInput Input, BalanceOutcome Outcome)
{
    /// <summary>Which of the filters at hand it uses, counted from 0; null when it uses none.</summary>
    public int? FilterIndex { get; init; }

    /// <summary>New distance over old of a flash that moves, by inverse square: 2^(-c/2). Null unless it moves.</summary>
    public double? DistanceFactor => Kind is BalanceRemedyKind.MoveFlashCloser or BalanceRemedyKind.MoveFlashAway
        ? Math.Pow(2, -ChangeStops / 2)
        : null;
}

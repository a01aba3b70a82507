namespace StudioCalc.Maths;

/// <summary>Something that helps where a flash exposure is not reached.</summary>
public enum FlashRemedyKind
{
    /// <summary>Move the first units closer.</summary>
    MoveCloser,

    /// <summary>Move the first units away.</summary>
    MoveAway,

    /// <summary>Pop the flash more often.</summary>
    MorePops,

    /// <summary>Pop the flash less often.</summary>
    FewerPops,

    /// <summary>Open the aperture.</summary>
    OpenAperture,

    /// <summary>Close the aperture.</summary>
    CloseAperture,

    /// <summary>Raise the ISO.</summary>
    RaiseIso,

    /// <summary>Lower the ISO.</summary>
    LowerIso,

    /// <summary>Put diffusion or a neutral-density gel on the first units.</summary>
    FilterFlash,

    /// <summary>Turn down the units beside the first.</summary>
    LowerOtherUnits,

    /// <summary>Turn the first units up.</summary>
    RaisePower,

    /// <summary>Turn the first units down.</summary>
    LowerPower,
}

/// <summary>A remedy, and what comes of it.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="ChangeStops">Light gained by what it acts on. [stops]</param>
/// <param name="Outcome">The calculation run again with it.</param>
public sealed record FlashRemedy(FlashRemedyKind Kind, double ChangeStops, FlashOutcome Outcome);

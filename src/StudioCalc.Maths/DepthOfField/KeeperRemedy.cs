namespace StudioCalc.Maths;

/// <summary>Something that gives the keepers.</summary>
public enum KeeperRemedyKind
{
    /// <summary>Focus anew before each frame.</summary>
    RefocusEachFrame,

    /// <summary>Take the bias out.</summary>
    CorrectBias,

    /// <summary>Close the aperture to a deeper zone.</summary>
    CloseAperture,

    /// <summary>Bracket focus about the locked setting.</summary>
    FocusBracket,
}

/// <summary>Something that gives the keepers, with what comes of it.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Keep">The chance that a frame is sharp then; of a bracket, that one of its frames is.</param>
/// <param name="Frames">Frames for the keepers wanted then.</param>
/// <param name="FNumber">For a closed aperture: its f-number.</param>
public sealed record KeeperRemedy(KeeperRemedyKind Kind, double Keep, int Frames, double? FNumber)
{
    /// <summary>What gives the keepers, each estimated again with it.</summary>
    /// <param name="input">What is wanted, and not reached.</param>
    /// <param name="optics">The camera behind the zone; null when the zone is told by its depths.</param>
    /// <param name="scale">The scale of aperture marks.</param>
    /// <param name="wavelengthUm">Wavelength, above 0. [µm]</param>
    public static IEnumerable<KeeperRemedy> For(KeeperInput input, KeeperOptics? optics, StopScale scale, double wavelengthUm)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.FocusIsLocked && Price(KeeperRemedyKind.RefocusEachFrame, input with { FocusIsLocked = false }) is { } refocused)
        {
            yield return refocused;
        }

        if (input is { FocusIsLocked: true, Keepers: 1 } && Bracket(input) is { } bracket)
        {
            yield return bracket;
        }

        if (input.Error.BiasMm != 0
            && Price(KeeperRemedyKind.CorrectBias, input with { Error = input.Error with { BiasMm = 0 } }) is { } corrected)
        {
            yield return corrected;
        }

        if (optics is not null && Closed(input, optics, scale, wavelengthUm) is { } closed)
        {
            yield return closed;
        }
    }

    // One keeper: further frames of a bracket are sharp elsewhere.
    private static KeeperRemedy? Bracket(KeeperInput input)
    {
        var none = default(NoTrail);
        var spread = input.Error.SpreadMm;
        var frames = KeepChance.BracketFrames(input.NearMm, input.FarMm, spread, input.Confidence, ref none);
        if (frames is < 2 or > KeepChance.MostBracketFrames)
        {
            return null;
        }

        // The joined zones lie evenly about the wanted plane less the bias.
        var half = (input.NearMm + input.FarMm) * (1 + 0.8 * (frames - 1)) / 2;
        return new(KeeperRemedyKind.FocusBracket, KeepChance.Of(half, half, new(spread, 0)).Keep, (int)frames, null);
    }

    private static KeeperRemedy? Closed(KeeperInput input, KeeperOptics optics, StopScale scale, double wavelengthUm)
    {
        var widest = ClosedAperture.Widest(
            optics.Lens, optics.FNumber, optics.PermittedBlurMm, scale, wavelengthUm, fNumber => At(fNumber) is not null);
        return widest is { } mark ? At(mark) : null;

        KeeperRemedy? At(double fNumber)
        {
            var zone = SharpZone.Evaluate(optics.Lens, fNumber, optics.PermittedBlurMm);
            var deeper = input with { NearMm = zone.NearDepthMm, FarMm = zone.FarDepthMm };
            return Price(KeeperRemedyKind.CloseAperture, deeper, fNumber);
        }
    }

    private static KeeperRemedy? Price(KeeperRemedyKind kind, KeeperInput input, double? fNumber = null)
    {
        var estimate = KeeperEstimate.Of(input);
        return estimate.ForWanted is { } frames ? new(kind, estimate.Chance.Keep, frames, fNumber) : null;
    }
}

/// <summary>The camera behind a sharp zone.</summary>
/// <param name="Lens">The lens and its focus.</param>
/// <param name="FNumber">Set f-number, above 0.</param>
/// <param name="PermittedBlurMm">Permitted blur, above 0. [mm]</param>
public sealed record KeeperOptics(LensFocus Lens, double FNumber, double PermittedBlurMm);

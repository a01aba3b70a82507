namespace StudioCalc.Maths;

/// <summary>What keepers are wanted, and of what.</summary>
public sealed record KeeperInput
{
    /// <summary>Sharp depth in front of the focused plane. [mm]</summary>
    public required double NearMm { get; init; }

    /// <summary>Sharp depth behind it; may be infinite. [mm]</summary>
    public required double FarMm { get; init; }

    /// <summary>How focus scatters.</summary>
    public required FocusError Error { get; init; }

    /// <summary>Wanted confidence, above 0 and below 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>Keepers wanted, above 0.</summary>
    public required int Keepers { get; init; }

    /// <summary>Whether focus is locked, so that all frames share one error.</summary>
    public required bool FocusIsLocked { get; init; }
}

/// <summary>How many frames give the keepers wanted.</summary>
public sealed record KeeperEstimate
{
    // Rounding error of a chance that equals the confidence.
    private const double Rounding = 1e-12;

    /// <summary>The chance that a frame is sharp.</summary>
    public required KeepChance Chance { get; init; }

    /// <summary>Frames for at least one keeper; null above <see cref="KeeperCount.MostFrames"/>.</summary>
    public required int? ForOne { get; init; }

    /// <summary>Frames for the keepers wanted; null above <see cref="KeeperCount.MostFrames"/>.</summary>
    public required int? ForWanted { get; init; }

    /// <summary>Estimates.</summary>
    /// <param name="input">What is wanted.</param>
    public static KeeperEstimate Of(KeeperInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var none = default(NoTrail);
        var chance = KeepChance.Of(input.NearMm, input.FarMm, input.Error);
        if (input.FocusIsLocked)
        {
            var holds = chance.Keep >= input.Confidence - Rounding;
            return new() { Chance = chance, ForOne = holds ? 1 : null, ForWanted = holds ? input.Keepers : null };
        }

        var one = KeeperCount.ForOne(chance, input.Confidence, ref none);
        return new()
        {
            Chance = chance,
            ForOne = one,
            ForWanted = input.Keepers == 1 ? one : KeeperCount.ForSeveral(chance, input.Confidence, input.Keepers),
        };
    }

    /// <summary>The same, and follows the sum.</summary>
    /// <param name="input">What is wanted.</param>
    /// <param name="trail">Follows the sum; it must hold the spread s already.</param>
    public static KeeperEstimate Of<TTrail>(KeeperInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var estimate = Of(input);
        trail.Section("chance of a frame");
        KeepChance.Of(input.NearMm, input.FarMm, input.Error, ref trail);
        trail.Section("frames");
        if (estimate.ForWanted is not { } wanted)
        {
            trail.Given(
                "short", estimate.LackingDepthMm(input), "mm", "deeper zone at which (62) gives confidence_share, found by halving",
                "not_reached.shortfall_mm");
            return estimate;
        }

        if (input.FocusIsLocked)
        {
            trail.Given("n", 1, "", "under one locked focus all are sharp or none", "solution.frames_for_one");
        }
        else
        {
            KeeperCount.ForOne(estimate.Chance, input.Confidence, ref trail, "solution.frames_for_one");
        }

        trail.Given("k", input.Keepers, "", "keepers_wanted, 1 without any");
        trail.Given("nk", wanted, "", "depth of field (66), found by halving", "solution.frames_for_wanted");
        return estimate;
    }

    /// <summary>Depth that the zone lacks for one frame to be sharp with the confidence. [mm]</summary>
    /// <param name="input">What is wanted.</param>
    public double LackingDepthMm(KeeperInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Chance.Keep >= input.Confidence
            ? 0
            : KeepChance.LackingDepthMm(input.NearMm, input.FarMm, input.Error, input.Confidence);
    }

    /// <summary>Chance that a number of frames gives the keepers wanted.</summary>
    /// <param name="input">What is wanted.</param>
    /// <param name="frames">The frames, above 0.</param>
    public double ChanceOf(KeeperInput input, int frames)
    {
        ArgumentNullException.ThrowIfNull(input);
        return frames < input.Keepers ? 0
            : input.FocusIsLocked ? Chance.Keep
            : 1 - KeeperCount.ChanceOfFewer(Chance, frames, input.Keepers);
    }
}

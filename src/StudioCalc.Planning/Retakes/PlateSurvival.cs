using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>A plate that must be photographed before its look ends.</summary>
public sealed record PlateSurvivalInput
{
    /// <summary>Budget B from the event that starts its clock. [s]</summary>
    public required double BudgetS { get; init; }

    /// <summary>Carrying to the set. [s]</summary>
    public required double CarryS { get; init; }

    /// <summary>Settling on the set before the first frame. [s]</summary>
    public required double SettleS { get; init; }

    /// <summary>From frame to frame, above 0. [s]</summary>
    public required double FrameTimeS { get; init; }

    /// <summary>Chance p that a frame is a keeper, from 0 to 1.</summary>
    public required double KeeperChance { get; init; }

    /// <summary>Keepers k that are needed, 1 or more.</summary>
    public int Keepers { get; init; } = 1;
}

/// <summary>Whether a plate that nobody waits for lives long enough.</summary>
/// <remarks>
/// <code>
/// T = B - carry - settle         time for frames in s              (47)
/// m = floor(T / tau) + 1         frames that fit; 0 if T &lt; 0       (48)
/// P = P(Bin(m, p) >= k)          chance of k keepers in time       (49)
/// </code>
/// <para>tau: from frame to frame. The first frame is taken as soon as the plate has settled, so frames are one more than intervals.
/// The plate is taken to meet a set that is ready: the running order cannot raise this chance, only waiting can lower it. Source: counting
/// and the binomial distribution.</para>
/// </remarks>
/// <param name="FramesThatFit">Frames m.</param>
/// <param name="Chance">Chance P.</param>
public sealed record PlateSurvival(int FramesThatFit, double Chance)
{
    /// <summary>Evaluates a plate.</summary>
    /// <param name="input">The plate.</param>
    /// <param name="trail">Follows the sum.</param>
    public static PlateSurvival Evaluate<TTrail>(PlateSurvivalInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("survival");
        var B = trail.Given("B", Guard.NotNegative(input.BudgetS), "s", "budget");
        var carry = trail.Given("carry", Guard.NotNegative(input.CarryS), "s", "carrying");
        var settle = trail.Given("settle", Guard.NotNegative(input.SettleS), "s", "settling");
        var tau = trail.Given("tau", Guard.Positive(input.FrameTimeS), "s", "from frame to frame");
        var T = trail.Let("T", B - carry - settle, "s", "shoot plan (47)");
        var m = T < 0
            ? trail.Given("m", 0, "", "shoot plan (48), no time is left", "frames_that_fit")
            : trail.Let("m", Floor(T / tau + 0.000001) + 1, "", "shoot plan (48)", "frames_that_fit");
        var chance = Binomial.Split((int)Min(m, int.MaxValue), input.KeeperChance, input.Keepers).AtLeast;
        return new((int)Min(m, int.MaxValue), trail.Given("P", chance, "", "shoot plan (49), binomial distribution", "survival_chance"));
    }
}

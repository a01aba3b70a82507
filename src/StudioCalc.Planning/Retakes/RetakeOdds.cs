using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>What a shot needs to be finished.</summary>
public sealed record RetakeInput
{
    /// <summary>Chance p that a try (a frame or a burst) gives a keeper, above 0 and not above 1.</summary>
    public required double KeeperChance { get; init; }

    /// <summary>Keepers k that finish the shot, 1 or more.</summary>
    public int Keepers { get; init; } = 1;

    /// <summary>The most tries c before the shot is given up; null for no such limit.</summary>
    public int? MostTries { get; init; }

    /// <summary>Frames b of a try, 1 or more.</summary>
    public int FramesPerTry { get; init; } = 1;
}

/// <summary>How many tries a shot takes; frames, keepers and finished shots are kept apart.</summary>
/// <remarks>
/// <code>
/// n = k / p                      expected tries without a limit    (41)
/// n = (1 - q^c) / p              k = 1, at most c tries            (42)
/// n = sum of P(Bin(i, p) &lt; k) for i from 0 to c - 1               (43)
/// g = P(Bin(c, p) &lt; k)           chance to give up                 (44)
/// f = b n       y = p n          expected frames, keepers          (45)
/// N90 = least i with P(Bin(i, p) >= k) >= 0.9, at most c           (46)
/// </code>
/// <para>q = 1 - p. A shot is finished with its k-th keeper, with the chance 1 - g. Tries are taken as independent: misses of focus
/// come in runs, so give the chance of a burst as a whole. Source: geometric and negative binomial distributions; (45) is Wald's
/// identity.</para>
/// </remarks>
public sealed record RetakeOdds
{
    private const int LongestP90 = 1_000_000;

    /// <summary>Expected tries n.</summary>
    public required double ExpectedTries { get; init; }

    /// <summary>Variance of the tries.</summary>
    public required double TriesVariance { get; init; }

    /// <summary>Tries that suffice in nine of ten cases; null above a million.</summary>
    public required int? TriesP90 { get; init; }

    /// <summary>Chance g that the shot is given up; 0 without a limit.</summary>
    public required double GiveUpChance { get; init; }

    /// <summary>Expected frames f.</summary>
    public required double ExpectedFrames { get; init; }

    /// <summary>Expected keepers y.</summary>
    public required double ExpectedKeepers { get; init; }

    /// <summary>Expected finished shots: the chance that it is finished.</summary>
    public double ExpectedFinished => 1 - GiveUpChance;

    /// <summary>Chance that a burst of independent frames holds a keeper: 1 - (1 - p)^b.</summary>
    /// <param name="keeperChance">Chance p of a frame, from 0 to 1.</param>
    /// <param name="frames">Frames b of the burst.</param>
    public static double OfBurst(double keeperChance, int frames) => 1 - Pow(1 - Binomial.Share(keeperChance), frames);

    /// <summary>Evaluates a shot.</summary>
    /// <param name="input">What it needs.</param>
    /// <param name="trail">Follows the sum.</param>
    public static RetakeOdds Evaluate<TTrail>(RetakeInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("retakes");
        var p = trail.Given("p", Guard.Positive(Binomial.Share(input.KeeperChance)), "", "chance of a keeper");
        var k = trail.Given("k", Guard.Positive(input.Keepers), "", "keepers that finish a shot");
        var b = trail.Given("b", Guard.Positive(input.FramesPerTry), "", "frames of a try");
        var q = trail.Let("q", 1 - p, "", "chance of a miss");
        var (n, variance, g) = input.MostTries is { } most
            ? Capped(p, q, k, most, ref trail)
            : (trail.Let("n", k / p, "", "shoot plan (41)", "expected_tries"), k * q / (p * p), 0);
        var p90 = Binomial.FewestTries(p, input.Keepers, 0.9, input.MostTries ?? LongestP90) ?? input.MostTries;
        if (p90 is { } tries)
        {
            trail.Given("N90", tries, "", "shoot plan (46)", "tries_p90");
        }

        return new()
        {
            ExpectedTries = n,
            TriesVariance = variance,
            TriesP90 = p90,
            GiveUpChance = g,
            ExpectedFrames = trail.Let("f", b * n, "", "shoot plan (45)", "expected_frames"),
            ExpectedKeepers = trail.Let("y", p * n, "", "shoot plan (45)", "expected_keepers"),
        };
    }

    private static (double Tries, double Variance, double GiveUp) Capped<TTrail>(double p, double q, double k, int most, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var c = trail.Given("c", most, "", "most tries");
        var (mean, square) = (0.0, 0.0);
        for (var i = 0; i < most; i++)
        {
            var goesOn = Binomial.Split(i, p, (int)k).Fewer;
            (mean, square) = (mean + goesOn, square + (2.0 * i + 1) * goesOn);
            if (goesOn < 1e-18 && i > k / p)
            {
                break;
            }
        }

        if (k == 1)
        {
            var once = trail.Let("n", (1 - Pow(q, c)) / p, "", "shoot plan (42)", "expected_tries");
            return (once, Max(0, square - once * once), trail.Let("g", Pow(q, c), "", "shoot plan (44)", "give_up_chance"));
        }

        var n = trail.Given("n", mean, "", "shoot plan (43), summed", "expected_tries");
        var g = trail.Given("g", Binomial.Split(most, p, (int)k).Fewer, "", "shoot plan (44), binomial distribution", "give_up_chance");
        return (n, Max(0, square - n * n), g);
    }
}

using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>The mean length of a quoted day, by adding means.</summary>
/// <remarks>
/// <code>
/// N = (1 - q^(P c)) / p              tries of a shot, with at most P plates of c tries       (87)
/// m = (1 - q^(P c)) / (1 - q^c) - 1  new plates of a shot                                    (88)
/// work = F + n w + (n - 1) y z + n k (x + N t + m r + a)
/// mean = work + floor(work / B) b                                                            (89)
/// </code>
/// <para>q = 1 - p. F: load-in, first setup and strike; w, z, x, t, r, a, b: means of wait, change of setup, swap, try, new plate, approval and
/// break; B: work between breaks; all in s. n dishes of k shots; y: share of dishes with a change of setup. Means add, percentiles do not.
/// Breaks are counted at the mean of the work, as <see cref="Quote"/> counts them draw by draw. Source: Wald's identity, definitions.</para>
/// </remarks>
/// <param name="LengthS">The mean length. [s] (89)</param>
/// <param name="TriesPerShot">Expected tries of a shot N.</param>
public sealed record QuoteMean(double LengthS, double TriesPerShot)
{
    /// <summary>Evaluates a day.</summary>
    /// <param name="input">The day.</param>
    /// <param name="trail">Follows the sum.</param>
    public static QuoteMean Evaluate<TTrail>(QuoteInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("mean day");
        var p = trail.Given("p", Guard.Positive(Binomial.Share(input.KeeperChance.Value)), "", "chance that a try gives a keeper");
        var c = trail.Given("c", Guard.Positive(input.MostTries.Value), "", "most tries with a plate");
        var P = trail.Given("P", Quote.MostPlates, "", "most plates of a shot");
        var q = trail.Let("q", 1 - p, "", "chance of a miss");
        var N = trail.Let("N", (1 - Pow(q, P * c)) / p, "", "shoot plan (87)");
        var m = trail.Let("m", (1 - Pow(q, P * c)) / (1 - Pow(q, c)) - 1, "", "shoot plan (88)");
        var t = trail.Given("t", input.Try.Time.Mean, "s", "mean of a try");
        var r = trail.Given("r", input.NewPlate.Time.Mean, "s", "mean wait for a new plate");
        var x = trail.Given("x", input.Swap.Time.Mean, "s", "mean swap of plates");
        var a = trail.Given("a", input.Approval.Time.Mean, "s", "mean approval");
        var shot = trail.Let("shot", x + N * t + m * r + a, "s", "mean of a shot");
        var k = trail.Given("k", Guard.Positive(input.ShotsPerDish), "", "shots of a dish");
        var w = trail.Given("w", input.PlateWait.Time.Mean, "s", "mean wait for the kitchen");
        var y = trail.Given("y", Binomial.Share(input.SetupShare.Value), "", "share of dishes with a change of setup");
        var z = trail.Given("z", input.SetupChange.Time.Mean, "s", "mean change of setup");
        var n = trail.Given("n", Guard.Positive(input.Dishes), "", "dishes");
        var F = trail.Given("F", input.LoadIn.Time.Mean + input.FirstSetup.Time.Mean + input.Strike.Time.Mean, "s", "means of load-in, first setup and strike");
        var work = trail.Let("work", F + n * w + (n - 1) * y * z + n * k * shot, "s", "shoot plan (89)");
        var B = trail.Given("B", Guard.Positive(input.HoursBetweenBreaks.Value) * 3600, "s", "work between breaks");
        var b = trail.Given("b", input.Break.Time.Mean, "s", "mean of a break");
        return new(trail.Let("mean", work + Floor(work / B) * b, "s", "shoot plan (89)", "mean_length"), N);
    }
}

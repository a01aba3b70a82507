using StudioCalc.Maths;
using static System.Math;

namespace StudioCalc.Planning;

/// <summary>A quote from round numbers and a ratio that the studio knows from earlier days.</summary>
public sealed record QuoteSumInput
{
    /// <summary>Fixed times: load-in, first setup, strike. [s]</summary>
    public required double FixedS { get; init; }

    /// <summary>Further setups.</summary>
    public required int Setups { get; init; }

    /// <summary>One further setup. [s]</summary>
    public required double SetupS { get; init; }

    /// <summary>Dishes.</summary>
    public required int Dishes { get; init; }

    /// <summary>One dish, above 0. [s]</summary>
    public required double DishS { get; init; }

    /// <summary>P90 of the day over its P50, 1 or more.</summary>
    public required double P90OverP50 { get; init; }

    /// <summary>The day that the dishes should fit; null when that is not asked. [s]</summary>
    public double? DayS { get; init; }
}

/// <summary>Hours of a day from round numbers.</summary>
/// <remarks>
/// <code>
/// P50 = F + m s + n d      P90 = k P50                             (85)
/// fit = floor((H / k - F - m s) / d)                               (86)
/// </code>
/// <para>F: fixed times, m setups of s, n dishes of d, all in s; k: P90 over P50 of whole days; H: the day. Source: counting.</para>
/// </remarks>
/// <param name="P50S">The likely day. [s]</param>
/// <param name="P90S">The day that is kept nine times in ten. [s]</param>
/// <param name="DishesThatFit">Dishes that fit the day with nine chances in ten; null when not asked.</param>
public sealed record QuoteSum(double P50S, double P90S, int? DishesThatFit)
{
    /// <summary>Contingency. [s]</summary>
    public double ContingencyS => P90S - P50S;

    /// <summary>Sums up a day.</summary>
    /// <param name="input">The numbers.</param>
    /// <param name="trail">Follows the sum.</param>
    public static QuoteSum Evaluate<TTrail>(QuoteSumInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        trail.Section("quote");
        var F = trail.Given("F", Guard.NotNegative(input.FixedS), "s", "fixed times");
        var m = trail.Given("m", Guard.NotNegative(input.Setups), "", "setups");
        var s = trail.Given("s", Guard.NotNegative(input.SetupS), "s", "one setup");
        var n = trail.Given("n", Guard.NotNegative(input.Dishes), "", "dishes");
        var d = trail.Given("d", Guard.Positive(input.DishS), "s", "one dish");
        var k = trail.Given("k", Guard.Positive(input.P90OverP50), "", "P90 over P50");
        var P50 = trail.Let("P50", F + m * s + n * d, "s", "shoot plan (85)");
        var P90 = trail.Let("P90", k * P50, "s", "shoot plan (85)");
        if (input.DayS is not { } day)
        {
            return new(P50, P90, null);
        }

        var H = trail.Given("H", Guard.NotNegative(day), "s", "the day");
        return new(P50, P90, (int)trail.Let("fit", Max(0, Floor((H / k - F - m * s) / d + 0.000001)), "", "shoot plan (86)", "dishes_that_fit"));
    }
}

using CsCheck;
using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

public sealed class QuoteTests
{
    private const double HourMs = 3_600_000;

    [Fact]
    public void Draw_OnOneCoreOrTwo_GivesTheSameAnswer()
    {
        var input = new QuoteInput { Dishes = 9, DayHours = 8 };
        Assert.Equal(Quote.Draw(input, 500, 3, 1, default), Quote.Draw(input, 500, 3, 2, default));
        Assert.NotEqual(Quote.Draw(input, 500, 3, 1, default).LengthMs, Quote.Draw(input, 500, 4, 1, default).LengthMs);
    }

    // Every time certain, every try a keeper: the sum on paper. 45 + 30 + 30 min, 10 dishes of 8 + 2 x (2 + 1.25 + 1.5) min and no change.
    [Fact]
    public void Draw_OfCertainTimes_IsTheSum()
    {
        var input = Certain(10) with { ShotsPerDish = 2 };
        var quote = Quote.Draw(input, 100, 1, 2, default);
        Assert.Equal((105 + 10 * (8 + 2 * 4.75)) * 60_000, quote.LengthMs.P90.Value);
        Assert.Equal(0, quote.ContingencyMs);
    }

    [Fact]
    public void Draw_OfLongWork_HasBreaks()
    {
        var input = Certain(40) with { HoursBetweenBreaks = new(5, Basis.Assumption) };
        var work = 105 + 40 * 12.75;
        Assert.Equal((work + 2 * 45) * 60_000, Quote.Draw(input, 10, 1, 1, default).LengthMs.P50.Value);
    }

    [Fact]
    public void DishesThatFit_AreTheMostWhoseP90Fits() => Gen.Select(Gen.Double[3, 12], Gen.UInt).Sample(
        (hours, seed) =>
        {
            var fit = Quote.Draw(new() { Dishes = 1, DayHours = hours }, 200, seed, 2, default).DishesThatFit!.Value;
            Assert.True(fit == 0 || P90(fit, seed) <= hours * HourMs);
            Assert.True(P90(fit + 1, seed) > hours * HourMs);
        },
        iter: 20);

    [Fact]
    public void Draw_OfMoreDishesOrPoorerChances_IsLonger()
    {
        var input = new QuoteInput { Dishes = 8 };
        var usual = Quote.Draw(input, 500, 1, 2, default);
        Assert.True(Quote.Draw(input with { Dishes = 9 }, 500, 1, 2, default).LengthMs.P10.Value > usual.LengthMs.P10.Value);
        Assert.True(Quote.Draw(input with { KeeperChance = new(0.2, Basis.Assumption) }, 500, 1, 2, default).LengthMs.P50.Value > usual.LengthMs.P50.Value);
        Assert.True(usual.ContingencyMs > 0);
        Assert.Null(usual.DishesThatFit);
    }

    // Percentiles do not add: the sum of the parts' ninetieth is later than the ninetieth of the day.
    [Fact]
    public void P90_OfADay_IsBelowTheSumOfP90s()
    {
        var input = Certain(12) with { PlateWait = QuoteDefaults.PlateWait };
        var sum = (105 + 12 * 4.75) * 60_000 + 12 * 1000 * QuoteDefaults.PlateWait.Time.Quantile(0.9);
        Assert.True(Quote.Draw(input, 2000, 1, 2, default).LengthMs.P90.Value < sum);
    }

    [Fact]
    public void Basis_OfAnAnswer_IsItsWeakest()
    {
        Assert.Equal(Basis.Assumption, Quote.Draw(new() { Dishes = 1 }, 10, 1, 1, default).Basis);
        var measured = Known(Basis.Measured);
        Assert.Equal(Basis.Measured, measured.Basis);
        Assert.Equal(Basis.StudioHistory, (measured with { Try = measured.Try with { Basis = Basis.StudioHistory } }).Basis);
        Assert.Equal(Basis.Assumption, (measured with { MostTries = measured.MostTries with { Basis = Basis.Assumption } }).Basis);
    }

    [Fact]
    public void Draw_WhereNothingIsKept_EndsWithTheMostPlates()
    {
        var input = Certain(1) with { KeeperChance = new(1e-12, Basis.Assumption), MostTries = new(3, Basis.Assumption) };
        var minutes = 105 + 8 + 2 + 1.5 + Quote.MostPlates * 3 * 1.25 + (Quote.MostPlates - 1) * 12;
        Assert.Equal(minutes * 60_000, Quote.Draw(input, 5, 1, 1, default).LengthMs.P50.Value);
    }

    private static long P90(int dishes, uint seed) => Quote.Draw(new() { Dishes = dishes }, 200, seed, 2, default).LengthMs.P90.Value;

    private static QuoteInput Certain(int dishes)
    {
        static TimeEstimate Likely(TimeEstimate estimate) =>
            estimate with { Time = new(estimate.Time.Likely, estimate.Time.Likely, estimate.Time.Likely, Spread.Pert) };
        var usual = new QuoteInput { Dishes = dishes };
        return usual with
        {
            LoadIn = Likely(usual.LoadIn), FirstSetup = Likely(usual.FirstSetup), Strike = Likely(usual.Strike), SetupShare = new(0, Basis.Assumption),
            PlateWait = Likely(usual.PlateWait), Swap = Likely(usual.Swap), Try = Likely(usual.Try), KeeperChance = new(1, Basis.Assumption),
            NewPlate = Likely(usual.NewPlate), Approval = Likely(usual.Approval), Break = Likely(usual.Break),
            HoursBetweenBreaks = new(100, Basis.Assumption),
        };
    }

    private static QuoteInput Known(Basis basis)
    {
        TimeEstimate Time(TimeEstimate estimate) => estimate with { Basis = basis };
        NumberEstimate Number(NumberEstimate estimate) => estimate with { Basis = basis };
        var usual = new QuoteInput { Dishes = 1 };
        return usual with
        {
            LoadIn = Time(usual.LoadIn), FirstSetup = Time(usual.FirstSetup), Strike = Time(usual.Strike), SetupChange = Time(usual.SetupChange),
            SetupShare = Number(usual.SetupShare), PlateWait = Time(usual.PlateWait), Swap = Time(usual.Swap), Try = Time(usual.Try),
            KeeperChance = Number(usual.KeeperChance), MostTries = Number(usual.MostTries), NewPlate = Time(usual.NewPlate),
            Approval = Time(usual.Approval), Break = Time(usual.Break), HoursBetweenBreaks = Number(usual.HoursBetweenBreaks),
        };
    }
}

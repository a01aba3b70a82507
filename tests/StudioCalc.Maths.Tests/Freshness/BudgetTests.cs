using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class BudgetTests
{
    // The longest of a log-normal time is at most 100 times the likely, as the contract has it.
    private static readonly Gen<ThreePoint> Times = Gen.Select(Gen.Double[0, 60], Gen.Double[0, 60], Gen.Double[0, 60], Gen.Enum<Spread>())
        .Select((a, b, c, spread) => new ThreePoint(
            a, a + b, spread == Spread.LogNormal ? Math.Min(a + b + c, 100 * (a + b)) : a + b + c, spread));

    private static readonly Gen<(ShotStep[] Steps, TimedComponent[] Components)> Budgets = Gen.Int[1, 6].SelectMany(count => Gen.Select(
        Gen.Select(Times, Gen.Bool, (time, cut) => new ShotStep(time, cut)).Array[count],
        Gen.Select(Times, Gen.Int[0, count], Gen.Int[0, count], Gen.Int[0, count], Gen.Double[0, 20], Component).Array[1, 4]));

    [Fact]
    public void LatestAndEarliestStart_AreTheEdgesOfWhatHolds() => Budgets.Sample(budget =>
    {
        var likely = Evaluate(budget);
        foreach (var (component, times) in budget.Components.Zip(likely.Components))
        {
            if (Math.Abs(times.ClockStartS - times.LatestStartS) > 1e-6 && Math.Abs(times.SlackS!.Value) > 1e-6)
            {
                Assert.Equal(times.ClockStartS < times.LatestStartS && times.ClockStartS > times.EarliestStartS, times.Holds);
            }

            Assert.Equal(times.ClockStartS - times.EarliestStartS!.Value, times.SlackS!.Value, 1e-9);
        }
    });

    [Fact]
    public void CertainTimes_HoldInAllDrawsOrNone_AsTheLikelyOnesDo() => Budgets.Sample(
        budget =>
        {
            var certain = (
                budget.Steps.Select(step => step with { Time = Certain(step.Time.Likely) }).ToArray(),
                budget.Components.Select(component => component with { Window = Certain(component.Window!.Value.Likely) }).ToArray());
            var likely = Evaluate(certain);
            var chances = BudgetChances.Draw(certain.Item1, certain.Item2, 10, 1);
            Assert.Equal(likely.AllHold ? 10 : 0, chances.AllHeld);
            Assert.Equal(likely.Components.Select(component => component.Holds ? 10 : 0), chances.Held);
            Assert.Equal(likely.MomentsS.Skip(1), chances.EndsP90S);
        },
        iter: 300);

    [Fact]
    public void Cut_IsAStepOfNoTime_OnTheSameDraws() => Budgets.Sample(
        budget =>
        {
            foreach (var (cut, allHeld) in BudgetChances.Draw(budget.Steps, budget.Components, 200, 7).Cuts)
            {
                var without = budget.Steps.Select((step, i) => i == cut ? step with { Time = Certain(0) } : step).ToArray();
                Assert.Equal(BudgetChances.Draw(without, budget.Components, 200, 7).AllHeld, allHeld);
            }
        },
        iter: 200);

    [Fact]
    public void AllHold_LiesBetweenTheBoundsOfAnyDependence() => Budgets.Sample(
        budget =>
        {
            var chances = BudgetChances.Draw(budget.Steps, budget.Components, 300, 3);
            Assert.True(chances.AllHeld <= chances.Held.Min());
            Assert.True(chances.AllHeld >= chances.Held.Sum() - 300 * (chances.Held.Count - 1));
        },
        iter: 200);

    // The share of a beta-PERT window below a time by the exact distribution, by quadrature of its density.
    [Theory]
    [InlineData(60, 100, 200, 90)]
    [InlineData(60, 100, 200, 120)]
    [InlineData(10, 190, 200, 150)]
    public void UncertainWindow_HoldsAsOftenAsItsDistributionTells(double shortest, double likely, double longest, double need)
    {
        ShotStep[] steps = [new(Certain(need), false)];
        TimedComponent[] components = [Component(new(shortest, likely, longest, Spread.Pert), 0, 0, 1, 0)];
        var chances = BudgetChances.Draw(steps, components, 200_000, 5);
        var (before, after) = (4 * (likely - shortest) / (longest - shortest), 4 * (longest - likely) / (longest - shortest));
        double Mass(double to)
        {
            const int cells = 20000;
            var width = (to - shortest) / (longest - shortest) / cells;
            return Enumerable.Range(0, cells).Sum(i => Math.Pow((i + 0.5) * width, before) * Math.Pow(1 - (i + 0.5) * width, after)) * width;
        }

        Assert.Equal(1 - Mass(need) / Mass(longest), chances.Chance(chances.AllHeld), 4 * chances.Error(chances.AllHeld));
    }

    // Both log-normal: P = Phi(ln(mW / mE) / sqrt(sE² + sW²)) with median 150 and tenth percentile 110 of the window against 110 and 150.
    [Fact]
    public void WorkAndWindowLogNormal_AgreeWithTheClosedForm()
    {
        ShotStep[] steps = [new(new(0, 110, 150, Spread.LogNormal), false)];
        TimedComponent[] components = [Component(new(0, 150, 150 * 150 / 110.0, Spread.LogNormal), 0, 0, 1, 0)];
        var chances = BudgetChances.Draw(steps, components, 400_000, 1);
        Assert.Equal(0.81758, chances.Chance(chances.AllHeld), 4 * chances.Error(chances.AllHeld));
        Assert.Equal(150, chances.EndsP90S[0], 0.5);
    }

    // Densities that fall from 0 to 60 s: the share of the sum below 60 s is the integral of 2 (1 - x) (1 - x²) from 0 to 1.
    [Fact]
    public void TwoFallingTriangles_SumAsByIntegration()
    {
        ShotStep[] steps = [new(new(0, 0, 60, Spread.Triangle), false), new(new(0, 0, 60, Spread.Triangle), false)];
        TimedComponent[] components = [Component(Certain(60), 0, 0, 2, 0)];
        var chances = BudgetChances.Draw(steps, components, 200_000, 1);
        Assert.Equal(5 / 6.0, chances.Chance(chances.AllHeld), 4 * chances.Error(chances.AllHeld));
    }

    [Fact]
    public void Error_OfAllOrNone_IsAboveZero()
    {
        var chances = BudgetChances.Draw([new(Certain(1), false)], [Component(Certain(2), 0, 0, 1, 0)], 100, 1);
        Assert.Equal(100, chances.AllHeld);
        Assert.InRange(chances.Error(100), 1e-3, 2e-2);
    }

    [Fact]
    public void Runs_EndAtARefreshAndStartAfterIt_WhereTheLookIsNeeded()
    {
        var component = Component(Certain(1), 0, 2, 6, 0) with { Refreshes = [1, 3, 4] };
        Assert.Equal([new(2, 3), new(4, 4), new(5, 6)], component.Runs());
        Assert.Equal([new(2, 4), new(5, 6)], component.Runs(cut: 3));
        Assert.Equal([new(0, 3), new(4, 4), new(5, 6)], component.Runs(cut: 1));
    }

    private static ThreePoint Certain(double seconds) => new(seconds, seconds, seconds, Spread.Pert);

    private static TimedComponent Component(ThreePoint window, int one, int two, int three, double settling)
    {
        int[] moments = [.. new[] { one, two, three }.Order()];
        return new() { Window = window, ClockStart = moments[0], NeededFrom = moments[1], NeededUntil = moments[2], SettlingS = settling };
    }

    private static LikelyBudget Evaluate((ShotStep[] Steps, TimedComponent[] Components) budget)
    {
        var none = default(NoTrail);
        return LikelyBudget.Evaluate(budget.Steps, budget.Components, ref none);
    }
}

using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class FlashExposureTests
{
    private static readonly Gen<FlashUnit> Unit =
        from guideNumber in Gen.Double[5, 100]
        from iso in Gen.OneOf(100.0, 200.0, 400.0)
        from distance in Gen.Double[300, 6000]
        from power in Gen.Double[0, 7]
        from count in Gen.Int[1, 4]
        from loss in Gen.Double[0, 3]
        select new FlashUnit
        {
            GuideNumberM = guideNumber, GuideNumberIso = iso, DistanceMm = distance, PowerBelowFullStops = power, Count = count, LossStops = loss,
        };

    private static readonly Gen<FlashInput> Input =
        from unknown in Gen.Enum<FlashUnknown>()
        from first in Unit
        from others in Unit.List[0, 3]
        from aperture in Gen.Double[2, 32]
        from iso in Gen.Double[50, 6400]
        from pops in Gen.Int[1, 8]
        from lens in Gen.Double[0, 3]
        from compensation in Gen.Double[-2, 2]
        select new FlashInput
        {
            Unknown = unknown,
            First = first,
            Others = others,
            FNumber = aperture,
            Iso = iso,
            Pops = pops,
            LensLossStops = lens,
            CompensationStops = compensation,
            PowersBelowFullStops = FlashPowers.Steps(StopScale.Tenth, 7),
            Limits = new() { WidestFNumber = 1, SmallestFNumber = 64, LowestIso = 25, HighestIso = 102400 },
        };

    [Fact]
    public void Solve_AnyUnknown_ReachesWhatWasAskedWithinOneStep() => Input.Sample(input =>
    {
        var outcome = Solve(input);
        if (outcome.Obstacle != FlashObstacle.None)
        {
            return;
        }

        var (least, most) = input.Unknown switch
        {
            FlashUnknown.Aperture or FlashUnknown.Iso => (-1 / 6.0, 1 / 6.0),
            FlashUnknown.Power => (-0.05, 0.05),
            FlashUnknown.Pops => (0, 1),
            _ => (0.0, 0),
        };
        Assert.InRange(outcome.RestStops, least - 1e-6, most + 1e-6);
    });

    // Another route: the light of each unit in lux seconds, added, against what an incident meter asks for.
    [Fact]
    public void Solve_AnyUnknown_RestIsThatOfTheLuxSecondsAtTheSubject() => Input.Sample(input =>
    {
        var outcome = Solve(input with { Scale = StopScale.Third });
        if (input.Unknown is FlashUnknown.Aperture or FlashUnknown.Iso)
        {
            return;
        }

        var exposure = input.Others.Concat(outcome.First is { } first ? [first] : []).Sum(unit =>
            unit.Count * 250 * Math.Pow(unit.GuideNumberM, 2) / unit.GuideNumberIso / Math.Pow(unit.DistanceMm / 1000, 2)
            / Math.Pow(2, unit.PowerBelowFullStops) / Math.Pow(2, unit.LossStops)) * outcome.Pops;
        var asked = 250 * input.FNumber * input.FNumber / input.Iso * Math.Pow(2, input.LensLossStops + input.CompensationStops);
        Assert.Equal(exposure, outcome.ExposureLxS, 1e-9 * exposure);
        Assert.Equal(Math.Log2(exposure / asked), outcome.RestStops, 1e-9);
    });

    [Fact]
    public void Solve_NotReached_ShortfallIsTheRestAndEveryRemedyHelps() => Input.Sample(input =>
    {
        var outcome = Solve(input);
        var remedies = FlashRemedies.For(input, outcome);
        if (outcome.Obstacle == FlashObstacle.None)
        {
            Assert.Equal(0, outcome.ShortfallStops);
            Assert.Empty(remedies);
            return;
        }

        Assert.True(outcome.ShortfallStops >= 0);
        Assert.Equal(outcome.ShortfallStops, Math.Abs(outcome.RestStops), 1e-6);
        Assert.Equal(remedies.Count, remedies.DistinctBy(remedy => remedy.Kind).Count());
        Assert.All(remedies, remedy =>
        {
            var helps = outcome.RestStops > 0 ? -remedy.ChangeStops : remedy.ChangeStops;
            Assert.True(helps > 0, $"{remedy.Kind} changes {remedy.ChangeStops}");
            Assert.True(
                remedy.Outcome.Obstacle != outcome.Obstacle || remedy.Outcome.ShortfallStops < outcome.ShortfallStops + 1e-6,
                $"{remedy.Kind} leaves {remedy.Outcome.ShortfallStops} of {outcome.ShortfallStops}");
        });
    });

    [Fact]
    public void Solve_DistanceDoubled_NeedsTwiceTheGuideNumber() => Input.Sample(input =>
    {
        var near = Solve(input with { Unknown = FlashUnknown.GuideNumber, Others = [] });
        var far = Solve(input with
        {
            Unknown = FlashUnknown.GuideNumber, Others = [], First = input.First with { DistanceMm = 2 * input.First.DistanceMm },
        });
        Assert.Equal(2 * near.First!.GuideNumberM, far.First!.GuideNumberM, 1e-9 * far.First.GuideNumberM);
    });

    [Fact]
    public void Steps_OfAHead_RunFromFullToTheLowest()
    {
        Assert.Equal([0.0, 1 / 3.0, 2 / 3.0, 1], FlashPowers.Steps(StopScale.Third, 1.2));
        Assert.Equal([0.0], FlashPowers.Steps(StopScale.Whole, 0));
        Assert.Equal(71, FlashPowers.Steps(StopScale.Tenth, 7).Count);
    }

    private static FlashOutcome Solve(FlashInput input)
    {
        var none = default(NoTrail);
        return FlashExposure.Solve(input, ref none);
    }
}

using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Distances of lights, and plans of a fill.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> DistancePairs = new()
    {
        [AdvisoryCode.InverseSquareMisses] = (
            () => Distance(request => request.ChangeStops = -0.8),
            () => Distance(request => request.ChangeStops = -0.6)),
        [AdvisoryCode.SeveralDistances] = (
            () => Distance(request => Upright(request, sillMm: 400)),
            () => Distance(request => Upright(request, sillMm: -100))),
        [AdvisoryCode.ShadowEdgeOpen] = (
            () => Plan(request => request.EdgeHeightMm = 115),
            () => Plan(request => request.EdgeHeightMm = 105)),
        [AdvisoryCode.FlatFoodDarker] = (
            () => Plan(request => request.Source.Pose.Position = new() { XMm = 0, YMm = -643, ZMm = 766 }),
            () => Plan(request => request.Source.Pose.Position = new() { XMm = 0, YMm = -530, ZMm = 848 })),
        [AdvisoryCode.FillNotUnder] = (
            () => Plan(request => request.Under.UnderStops = 0),
            () => Plan(request => request.Under.UnderStops = 0.1)),
    };

    [Fact]
    public void ListCut_OfMoreThanAThousandWays_NamesHowManyAreLeftOut()
    {
        var request = Examples.PlanFill();
        request.IncludeWorking = false;
        request.PowerSteps = new() { Scale = StopScale.Tenth, LowestPower = new() { BelowFullStops = 8 } };
        request.Distances = new() { NearestMm = 10, FarthestMm = 100000 };
        request.Directions.Add(Enumerable.Range(0, 24).Select(i => new FillDirection { ElevationDeg = 30, AzimuthDeg = 15 * i - 180 }));
        var answer = Calls.FillPlacement.PlanFill(request);
        Assert.Equal(1000, answer.Plan.Ways.Count);
        var cut = Assert.Single(answer.Advisories, advisory => advisory.Code == AdvisoryCode.ListCut);
        Assert.Equal("plan.ways", cut.Field);
        Assert.True(cut.Values["left_out_count"] > 0);
    }

    private static void Upright(SolveDistanceRequest request, double sillMm)
    {
        request.Source.Rectangle = new() { WidthMm = 1200, HeightMm = 1500 };
        request.Source.Pose.Position = new() { XMm = 0, YMm = 1000, ZMm = sillMm + 750 };
        request.Source.Pose.AimPoint = new() { XMm = 0, YMm = 0, ZMm = sillMm + 750 };
        request.Receiver = new() { Place = new() { XMm = 0, YMm = 0, ZMm = 0 }, Up = true };
        request.Distances = new() { NearestMm = 100, FarthestMm = 5000 };
        request.ChangeStops = 0.1;
    }

    private static SolveDistanceResponse Distance(Action<SolveDistanceRequest> change)
    {
        var request = Examples.SolveDistance();
        change(request);
        return Calls.FillPlacement.SolveDistance(request);
    }

    private static PlanFillResponse Plan(Action<PlanFillRequest> change)
    {
        var request = Examples.PlanFill();
        change(request);
        return Calls.FillPlacement.PlanFill(request);
    }
}

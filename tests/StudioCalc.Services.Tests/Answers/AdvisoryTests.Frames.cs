using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> FramesPairs = new()
    {
        [AdvisoryCode.LensReachesSubject] = (
            () => Framing(request => request.LensFrontToSensorMm = 1500),
            () => Framing(request => request.LensFrontToSensorMm = 1000)),
        [AdvisoryCode.RailMovesViewpoint] = (
            () => Stack(request => request.Method = StackMethod.FocusingRail),
            () => Stack(request => request.Method = StackMethod.FocusRing)),
        [AdvisoryCode.FoodMovesInStack] = (
            () => Stack(request => request.RecycleTime = new() { Seconds = 4 }),
            () => Stack(request => request.RecycleTime = new() { Seconds = 1, Nanos = 900_000_000 })),
        [AdvisoryCode.FramesShareError] = (
            () => Keepers(request => request.FocusIsLocked = true),
            () => Keepers(request => request.FocusIsLocked = false)),
        [AdvisoryCode.BiasInEveryFrame] = (
            () => Keepers(request => request.BiasMm = 4),
            () => Keepers(request => request.BiasMm = 1)),
        [AdvisoryCode.TiltLaysOnePlane] = (
            () => Tilt(request => request.Table.ElevationDeg = 60),
            () => Tilt(request => request.Table.ElevationDeg = 90)),
        [AdvisoryCode.ScalesOffWhenTilted] = (
            () => Tilt(request => request.Table.ElevationDeg = 60),
            () => Tilt(request => request.Table.ElevationDeg = 90)),
    };

    [Fact]
    public void PlanFocusStack_PastTheDiffractionLimit_SaysSo()
    {
        var answer = Stack(request => (request.Aperture.Set.Mark, request.DefocusOnly) = ("f/32", true));
        Assert.Contains(answer.Advisories, advisory => advisory.Code == AdvisoryCode.DiffractionSpoils && advisory.Field == "aperture");
        answer = Stack(request => request.Aperture.Set.Mark = "f/11");
        Assert.Contains(answer.Advisories, advisory => advisory.Code == AdvisoryCode.DiffractionCounts);
        answer = Stack(request => request.Aperture.Set.Mark = "f/4");
        Assert.DoesNotContain(answer.Advisories, advisory => advisory.Code is AdvisoryCode.DiffractionCounts or AdvisoryCode.DiffractionSpoils);
    }

    [Fact]
    public void EstimateKeepers_PastTheDiffractionLimit_NamesTheFieldOfTheSettings()
    {
        var answer = Keepers(request => request.Settings.Aperture.Set.Mark = "f/32");
        Assert.Equal("settings.aperture", answer.Advisories.Single(advisory => advisory.Code == AdvisoryCode.DiffractionSpoils).Field);
    }

    private static EvaluateFramingResponse Framing(Action<EvaluateFramingRequest> change)
    {
        var request = Examples.Framing();
        change(request);
        return Calls.DepthOfField.EvaluateFraming(request);
    }

    private static PlanFocusStackResponse Stack(Action<PlanFocusStackRequest> change)
    {
        var request = Examples.Stack();
        request.AvailableTime = null;
        change(request);
        return Calls.DepthOfField.PlanFocusStack(request);
    }

    private static EstimateKeepersResponse Keepers(Action<EstimateKeepersRequest> change)
    {
        var request = Examples.Keepers();
        change(request);
        return Calls.DepthOfField.EstimateKeepers(request);
    }

    private static SolveTiltResponse Tilt(Action<SolveTiltRequest> change)
    {
        var request = Examples.Tilt();
        change(request);
        return Calls.DepthOfField.SolveTilt(request);
    }
}

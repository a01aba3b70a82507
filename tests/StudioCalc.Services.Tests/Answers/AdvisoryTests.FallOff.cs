using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Fits and errors of a placement.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> FallOffPairs = new()
    {
        [AdvisoryCode.TapeErrorLarge] = (
            () => PlacementError(request => request.TapeErrorMm = 101),
            () => PlacementError(request => request.TapeErrorMm = 100)),
        [AdvisoryCode.DistancesClose] = (
            () => Fit(request => request.Readings[0].DistanceMm = 751),
            () => Fit(request => request.Readings[0].DistanceMm = 750)),
        [AdvisoryCode.FitExtrapolated] = (
            () => Fit(request => request.PredictDistancesMm.Add(1501)),
            () => Fit(request => request.PredictDistancesMm.Add(1500))),
        [AdvisoryCode.ModelsFitAlike] = (
            () => Fit(request => request.Readings.RemoveAt(1)),
            () => Fit(request => request.Readings[0].DistanceMm = 300)),
    };

    [Fact]
    public void FitSource_ReadWithUnlikeMeters_SaysSo()
    {
        Assert.Contains(
            Fit(request => request.Readings[1].Reading.Flash.Receptor = Receptor.Dome).Advisories,
            advisory => advisory.Code == AdvisoryCode.ReceptorsDiffer);
        Assert.DoesNotContain(Fit(_ => { }).Advisories, advisory => advisory.Code == AdvisoryCode.ReceptorsDiffer);
    }

    private static FitSourceResponse Fit(Action<FitSourceRequest> change)
    {
        var request = Examples.Fit();
        change(request);
        return Calls.FillPlacement.FitSource(request);
    }

    private static EstimatePlacementErrorResponse PlacementError(Action<EstimatePlacementErrorRequest> change)
    {
        var request = Examples.PlacementError();
        change(request);
        return Calls.FillPlacement.EstimatePlacementError(request);
    }
}

using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> SightPairs = new()
    {
        [AdvisoryCode.ElevationConverted] = (
            () => Bowl(request => request.ElevationOrigin = ElevationOrigin.Vertical),
            () => Bowl(request => request.ElevationOrigin = ElevationOrigin.Table)),
        [AdvisoryCode.MiddleIsNotHalf] = (
            () => Bowl(request => request.ElevationDeg = 22.5),
            () => Bowl(request => request.ElevationDeg = 25.5)),
        [AdvisoryCode.NothingShows] = (
            () => Bowl(request => request.ElevationDeg = 10),
            () => Bowl(request => request.ElevationDeg = 12.5)),
        [AdvisoryCode.FrontForeshortened] = (
            () => SightLine(request => request.ElevationDeg = 79),
            () => SightLine(request => request.ElevationDeg = 78)),
    };

    private static EvaluateBowlResponse Bowl(Action<EvaluateBowlRequest> change)
    {
        var request = Examples.Bowl();
        change(request);
        return Calls.PlateView.EvaluateBowl(request);
    }

    private static EvaluateSightLineResponse SightLine(Action<EvaluateSightLineRequest> change)
    {
        var request = Examples.SightLine();
        request.ElevationOrigin = ElevationOrigin.Table;
        change(request);
        return Calls.PlateView.EvaluateSightLine(request);
    }
}

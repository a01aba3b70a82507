using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Views that were looked for, and moves.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> RankingPairs = new()
    {
        [AdvisoryCode.BestViewAtEnd] = (
            () => Rank(request => request.Elevations.ToDeg = 40),
            () => Rank(request => (request.Elevations, request.Azimuths, request.PlateTurns) = (null, null, null))),
        [AdvisoryCode.ComponentOutsideFrame] = (
            () => Rank(request => request.Camera.FieldWidthMm = 80),
            () => Rank(_ => { })),
        [AdvisoryCode.RestingNotMoved] = (
            () => Move(request => request.Scene.Components[1].Base.ZMm = 20),
            () => Move(_ => { })),
    };

    private static RankViewsResponse Rank(Action<RankViewsRequest> change)
    {
        var request = Examples.Rank();
        change(request);
        return Calls.PlateView.RankViews(request);
    }

    private static SuggestMoveResponse Move(Action<SuggestMoveRequest> change)
    {
        var request = Examples.Move();
        change(request);
        return Calls.PlateView.SuggestMove(request);
    }
}

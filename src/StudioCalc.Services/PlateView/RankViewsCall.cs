using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>RankViews.</content>
public sealed partial class PlateViewAdapter
{
    private static readonly FieldPath RankRoot = FieldPath.Root(RankViewsRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<RankViewsResponse> RankViews(RankViewsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var read = new RequestContext(scale: null);
        var search = read.ReadRanking(request, RankRoot);
        read.ThrowIfRefused();
        return Task.FromResult(Rank(request, read, search!, context.CancellationToken));
    }

    private static RankViewsResponse Rank(
        RankViewsRequest request, RequestContext context, RankingRead read, CancellationToken cancellation)
    {
        var search = read.Search;
        var ranked = ViewRanking.Find(search, cancellation);
        var response = new RankViewsResponse { ModelRevision = ModelRevision.Current };
        if (ranked.Best.Count > 0)
        {
            response.Solution = new();
            response.Solution.Views.Add(ranked.Best.Select(found => RankingWriter.View(read, found)));
        }
        else
        {
            response.NotReached = RankingWriter.NotReached(read, ranked, cancellation);
            response.NotReached.Views = (uint)(search.ElevationsDeg.Count * search.AzimuthsDeg.Count * search.TurnsDeg.Count);
        }

        if (request.IncludeMap)
        {
            response.Map.Add(RankingWriter.Map(search, ranked.Map));
        }

        var first = ranked.Best.Count > 0 ? ranked.Best[0] : ranked.Nearest;
        if (request.IncludeWorking && first is not null)
        {
            var trail = StepTrail.Start();
            trail.Section(ranked.Best.Count > 0 ? "best view" : "nearest view");
            first.Parts.Score(search.Weights, ranked.Best.Count > 0 ? "solution.views[0]." : "not_reached.nearest.", ref trail);
            response.Working.Add(trail);
        }

        else if (request.IncludeWorking)
        {
            var trail = StepTrail.Start();
            trail.Section("no view");
            var elevations = trail.Given("elevations", search.ElevationsDeg.Count, "", "asked for");
            var azimuths = trail.Given("azimuths", search.AzimuthsDeg.Count, "", "asked for");
            var turns = trail.Given("turns", search.TurnsDeg.Count, "", "asked for");
            trail.Let("views", elevations * azimuths * turns, "", "in none of them the camera can stand", "not_reached.views");
            response.Working.Add(trail);
        }

        RankingNotes.Note(context, request, read, ranked, RankRoot);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

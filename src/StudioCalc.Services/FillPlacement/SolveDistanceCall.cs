using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>SolveDistance.</content>
public sealed partial class FillPlacementAdapter
{
    /// <inheritdoc/>
    public override Task<SolveDistanceResponse> SolveDistance(SolveDistanceRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Solve(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Solve(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static SolveDistanceResponse Solve<TTrail>(SolveDistanceRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var input = SolveDistanceReader.Read(context, request, ref trail);
        context.ThrowIfRefused();
        var read = input!;
        var outcome = DistanceSolver.Solve(read.Scan, read.Wanted, read.NearestMm, read.FarthestMm, read.BandStops);
        var response = new SolveDistanceResponse { ModelRevision = ModelRevision.Current };
        Wanted(response, read, ref trail);
        var first = outcome.Places.Count > 0 ? outcome.Places[0] : outcome.Nearest;
        var field = outcome.Places.Count > 0 ? "solution.distances[0]" : "not_reached.nearest";
        if (outcome.Places.Count > 0)
        {
            response.Solution = new();
            response.Solution.Distances.Add(outcome.Places.Select(DistanceWriter.Place));
            context.NoteDistances(outcome.Places, read.BandStops);
        }
        else
        {
            response.NotReached = DistanceWriter.NotReached(outcome);
        }

        if (first is not null)
        {
            SolvedPlace.At(read.Scan, first.DistanceMm, read.Wanted, read.BandStops, ref trail, field + ".");
            context.NoteSources(
                [read.Source with { Face = read.Scan.Line.FaceAt(first.DistanceMm) }], [read.Scan.Line.Receiver.Place], _ => field);
            context.Advisories.Add(Advise.MovingLights());
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void Wanted<TTrail>(SolveDistanceResponse response, DistanceRead read, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (read.WantedChangeStops is { } change)
        {
            response.WantedChangeStops = change;
        }

        trail.Section("most gain");
        if (WantedLight.MostGainStops(read.Scan, ref trail) is { } gain)
        {
            response.MostGainStops = gain;
        }

        if (read.Source.Level is not { } level)
        {
            return;
        }

        trail.Section("wanted");
        var w = trail.Given("w", read.Wanted, "", "wanted light of the face");
        var k = trail.Given("k", level.Strength, "", "strength of the source");
        if (level.IsFlash)
        {
            response.WantedExposureLxS = trail.Let("H", k * w, "lx s", "fill placement (40)", "wanted_exposure_lx_s");
        }
        else
        {
            response.WantedIlluminanceLx = trail.Let("H", k * w, "lx", "fill placement (40)", "wanted_illuminance_lx");
        }
    }
}

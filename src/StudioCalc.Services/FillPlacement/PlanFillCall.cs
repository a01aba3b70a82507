using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>PlanFill.</content>
public sealed partial class FillPlacementAdapter
{
    /// <inheritdoc/>
    public override Task<PlanFillResponse> PlanFill(PlanFillRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Plan(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Plan(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static PlanFillResponse Plan<TTrail>(PlanFillRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var input = PlanFillReader.Read(context, request, ref trail);
        context.ThrowIfRefused();
        var read = input!;
        var planner = new FillPlanner(read.Input);
        var outcome = planner.Plan();
        var response = new PlanFillResponse
        {
            TargetLxS = read.Input.WantedLxS,
            TargetMeters = Meters(context, read),
            ModelRevision = ModelRevision.Current,
        };
        response.LeftOut.Add(outcome.LeftOut.Take(PlanFillWriter.MostWays).Select(PlanFillWriter.LeftOut));
        if (outcome.Ways.Count > 0)
        {
            response.Plan = new();
            response.Plan.Ways.Add(outcome.Ways.Take(PlanFillWriter.MostWays).Select(PlanFillWriter.Way));
            planner.Follow(outcome.Ways[0], ref trail, "plan.ways[0].");
        }
        else
        {
            response.NotReached = PlanFillWriter.NotReached(planner, outcome);
            if (outcome.Nearest is { } nearest)
            {
                planner.Follow(nearest, ref trail, "not_reached.nearest.");
            }
        }

        context.NoteFill(read, outcome);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static ApertureAnswer Meters(RequestContext context, FillRead read)
    {
        var none = default(NoTrail);
        var metered = read.Source.Level!.Metered(read.Input.WantedLxS, read.Input.Receiver.Collector, ref none);
        return CameraWriter.Aperture(default(LightSum).With(isFlash: true, read.Input.WantedLxS, metered).FlashFNumber(read.MeterIso), context.Scale);
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EstimateHoldingTime.</content>
public sealed partial class FreshnessAdapter
{
    private static readonly FieldPath HoldingRoot = FieldPath.Root(EstimateHoldingTimeRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EstimateHoldingTimeResponse> EstimateHoldingTime(EstimateHoldingTimeRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Estimate(request, context.CancellationToken, ref none));
        }

        var trail = StepTrail.Start();
        var response = Estimate(request, context.CancellationToken, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EstimateHoldingTimeResponse Estimate<TTrail>(
        EstimateHoldingTimeRequest request, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var paths = new HoldingPaths(
            HoldingRoot[EstimateHoldingTimeRequest.ItemFieldNumber],
            HoldingRoot[EstimateHoldingTimeRequest.EndsAtFieldNumber],
            HoldingRoot[EstimateHoldingTimeRequest.AirFieldNumber]);
        var read = context.ReadHolding(request.Item, request.EndsAt, request.Air, paths);
        context.ThrowIfRefused();

        var response = new EstimateHoldingTimeResponse { Facts = FactsWriter.Facts(read!, ref trail), ModelRevision = ModelRevision.Current };
        var holding = HoldingWriter.Compute(read!, cancellation, ref trail);
        response.Window = holding.Window;
        if (holding.HoldsOn is { } holdsOn)
        {
            response.HoldsOn = holdsOn;
        }

        response.Events.Add(holding.Events);
        context.NoteHolding(read!, holding, paths);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EstimatePortions.</content>
public sealed partial class ShootPlanAdapter
{
    private const double UsualConfidence = 0.9;

    private static readonly FieldPath PortionsRoot = FieldPath.Root(EstimatePortionsRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EstimatePortionsResponse> EstimatePortions(EstimatePortionsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(EstimatePlates(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = EstimatePlates(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EstimatePortionsResponse EstimatePlates<TTrail>(EstimatePortionsRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var portions = Portions.Evaluate(
            new()
            {
                PlateChance = request.PlateChance,
                Pictures = request.HasPictures ? (int)request.Pictures : 1,
                Confidence = request.HasConfidence ? request.Confidence : UsualConfidence,
                StandIns = request.HasStandIns ? (int)request.StandIns : 1,
            },
            ref trail);
        if (portions is null)
        {
            var context = new RequestContext(null);
            context.Violations.Add(PortionsRoot[EstimatePortionsRequest.PlateChanceFieldNumber].ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"With these pictures and this confidence it must be higher: over {Portions.MostPlates} plates would be needed."));
            context.ThrowIfRefused();
        }

        var response = new EstimatePortionsResponse
        {
            Plates = (uint)portions!.Plates,
            FreshPlates = (uint)portions.Fresh,
            SparePlates = (uint)portions.Spare,
            ReachedChance = portions.Reached,
            ModelRevision = ModelRevision.Current,
        };
        if (portions.Spare > 0)
        {
            response.Advisories.Add(Advise.PlatesMayFailTogether(PortionsRoot[EstimatePortionsRequest.PlateChanceFieldNumber]));
        }

        return response;
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EstimateHandover.</content>
public sealed partial class ShootPlanAdapter
{
    private const double UsualCardFill = 0.9;
    private const uint UsualCopies = 2;

    private static readonly FieldPath HandoverRoot = FieldPath.Root(EstimateHandoverRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EstimateHandoverResponse> EstimateHandover(EstimateHandoverRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(HandOver(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = HandOver(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EstimateHandoverResponse HandOver<TTrail>(EstimateHandoverRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        if (request.SentFrames > 0 && !request.HasLineMbitPerS)
        {
            context.Violations.Add(
                HandoverRoot[EstimateHandoverRequest.LineMbitPerSFieldNumber].ToString(), RefusalReason.Required, "Needed where frames are sent.");
        }

        context.ThrowIfRefused();
        var copies = request.HasCopies ? request.Copies : UsualCopies;
        var input = new HandoverInput
        {
            Frames = (int)request.Frames,
            FrameMb = request.FrameMb,
            CardGb = request.CardGb,
            CardFillShare = request.HasCardFillShare ? request.CardFillShare : UsualCardFill,
            Copies = (int)copies,
            CopyMbPerS = request.CopyMbPerS,
            CopiesSideBySide = request.CopiesSideBySide,
            UploadMb = request.SentFrames * (request.HasSentFrameMb ? request.SentFrameMb : request.FrameMb),
        };
        var plan = HandoverPlan.Evaluate(request.HasLineMbitPerS ? input with { UploadMbitPerS = request.LineMbitPerS } : input, ref trail);
        var response = new EstimateHandoverResponse
        {
            FramesPerCard = (uint)plan.FramesPerCard,
            DataMb = plan.DataMb,
            Backup = plan.BackupS.ToDuration(),
            Upload = plan.UploadS.ToDuration(),
            ModelRevision = ModelRevision.Current,
        };
        if (plan.Cards is { } cards)
        {
            response.Cards = (uint)cards;
        }
        else
        {
            response.Advisories.Add(Advise.CardHoldsNoFrame(HandoverRoot[EstimateHandoverRequest.CardGbFieldNumber]));
        }

        if (copies == 1 && request.Frames > 0)
        {
            response.Advisories.Add(Advise.OneCopyOnly(HandoverRoot[EstimateHandoverRequest.CopiesFieldNumber]));
        }

        return response;
    }
}

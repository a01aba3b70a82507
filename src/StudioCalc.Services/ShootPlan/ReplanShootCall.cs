using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>ReplanShoot.</content>
public sealed partial class ShootPlanAdapter
{
    private const int UsualReplanWidth = 5000;
    private const long UsualLeastGainMs = 60_000;

    private static readonly FieldPath ReplanDay = FieldPath.Root(ReplanShootRequest.Descriptor)[ReplanShootRequest.DayFieldNumber];

    /// <inheritdoc/>
    public override Task<ReplanShootResponse> ReplanShoot(ReplanShootRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        return Task.FromResult(Replan(request, context.CancellationToken));
    }

    private static ReplanShootResponse Replan(ReplanShootRequest request, CancellationToken cancellation)
    {
        var context = new RequestContext(null);
        var draft = context.DraftDay(request.Day, ReplanDay);
        var read = context.ReadReplan(request, draft);
        context.ThrowIfRefused();
        var looks = draft.ComputeLooks(context, cancellation);
        var before = new PlanBefore(draft, looks, read.Ranks, cancellation);
        var rest = new RestOfDay(draft, read, looks);
        var found = Planning.ShootOrder.Find(rest.Day.Day, new(request.HasEffort ? (int)request.Effort : UsualReplanWidth), cancellation);
        var (order, keptMs) = Keep(found, rest, request.LeastGain?.ToMilliseconds() ?? UsualLeastGainMs, cancellation);
        var answer = Answer(context, rest.Day, order, new OrderWriter(rest.Day, order, ReplanWriter.Begun(rest, read)), ReplanDay, cancellation);
        answer.Advisories.Clear();
        if (keptMs > 0)
        {
            context.Advisories.RemoveAll(advisory => advisory.Code == AdvisoryCode.OrderNotProved);
            context.Advisories.Add(Advise.OrderKept(keptMs / 1000.0));
        }

        var response = new ReplanWriter(request, draft, read, rest, order, before).Write(answer);
        NotePlates(context, response);
        response.Advisories.Add(context.Advisories);
        response.ModelRevision = ModelRevision.Current;
        return response;
    }

    private static void NotePlates(RequestContext context, ReplanShootResponse response)
    {
        for (var i = 0; i < response.PlatesOut.Count; i++)
        {
            var plate = response.PlatesOut[i];
            if (plate.HasLeftS && plate.LeftS < plate.NeededS
                && !response.Replace.Any(one => one.Plate == plate.Plate && one.Component == plate.Component))
            {
                context.Advisories.Add(Advise.PlatePastItsLook(FormattableString.Invariant($"plates_out[{i}].left_s"), plate.LeftS, plate.NeededS));
            }
        }
    }

    // An order is changed for what it must, not for moments.
    private static (Planning.ShootOrder Order, long KeptMs) Keep(Planning.ShootOrder found, RestOfDay rest, long leastGainMs, CancellationToken cancellation)
    {
        var kept = Schedule.Of(rest.Day.Day, rest.Order, cancellation);
        var gain = kept.FinishMs - found.Schedule.FinishMs;
        return kept.LeftOut.Count == found.Schedule.LeftOut.Count && kept.ExcessMs <= found.Schedule.ExcessMs && gain < Math.Max(leastGainMs, 1)
            && !kept.Order.SequenceEqual(found.Schedule.Order)
            ? (found with { Schedule = kept, IsProved = found.IsProved && kept.Cost <= found.Schedule.Cost }, Math.Max(0, gain))
            : (found, 0);
    }
}

using System.Threading.Channels;
using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>PlanShoot and StreamPlan.</content>
public sealed partial class ShootPlanAdapter
{
    private static readonly FieldPath StreamedPlan = FieldPath.Root(StreamPlanRequest.Descriptor)[StreamPlanRequest.PlanFieldNumber];

    /// <inheritdoc/>
    public override async Task<PlanShootResponse> PlanShoot(PlanShootRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        return (await new DayPlanner(request, context).PlanAsync(static (_, _) => { }).ConfigureAwait(false)).Plan;
    }

    /// <inheritdoc/>
    public override async Task StreamPlan(
        StreamPlanRequest request, IServerStreamWriter<StreamPlanResponse> responseStream, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(responseStream);
        ArgumentNullException.ThrowIfNull(context);
        var told = Channel.CreateUnbounded<PlanProgress>(new() { SingleReader = true, SingleWriter = true });
        var planner = new DayPlanner(request.Plan, context);
        var work = Task.Run(
            async () =>
            {
                try
                {
                    return await PlanUnderAsync(
                        new(null), StreamedPlan, planner, (step, share) => told.Writer.TryWrite(new() { Step = step, DoneShare = share }))
                        .ConfigureAwait(false);
                }
                finally
                {
                    told.Writer.Complete();
                }
            },
            CancellationToken.None);

        // Ends with the work, which looks at the call's own token.
        await foreach (var progress in told.Reader.ReadAllAsync(CancellationToken.None).ConfigureAwait(false))
        {
            await responseStream.WriteAsync(new() { Progress = progress }, context.CancellationToken).ConfigureAwait(false);
        }

        await responseStream.WriteAsync(new() { Plan = (await work.ConfigureAwait(false)).Plan }, context.CancellationToken).ConfigureAwait(false);
    }

    // Refuses under the path at which the plan stands in a request, together with what is refused already.
    private static async Task<PlannedDay> PlanUnderAsync(RequestContext gathered, FieldPath path, DayPlanner planner, Action<PlanStep, double> tell)
    {
        var planned = await new PlanParts(gathered).AnswerAsync(path, () => planner.PlanAsync(tell)).ConfigureAwait(false);
        gathered.ThrowIfRefused();
        return planned!;
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>CheckBudget.</content>
public sealed partial class FreshnessAdapter
{
    private static readonly FieldPath BudgetRoot = FieldPath.Root(CheckBudgetRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<CheckBudgetResponse> CheckBudget(CheckBudgetRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        return Task.FromResult(CheckWithWorking(request, BudgetRoot, context.CancellationToken));
    }

    private static CheckBudgetResponse CheckWithWorking(CheckBudgetRequest request, FieldPath root, CancellationToken cancellation)
    {
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Check(request, root, ref none, cancellation);
        }

        var trail = StepTrail.Start();
        var response = Check(request, root, ref trail, cancellation);
        response.Working.Add(trail);
        return response;
    }

    private static CheckBudgetResponse Check<TTrail>(CheckBudgetRequest request, FieldPath root, ref TTrail trail, CancellationToken cancellation)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var read = context.ReadBudget(request, root);
        var holdings = new Holding[read.Components.Count];
        var none = default(NoTrail);
        for (var i = 0; i < holdings.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            holdings[i] = HoldingWriter.Compute(read.Components[i].Holding, cancellation, ref none);
            context.NoteHolding(read.Components[i].Holding, holdings[i], read.Components[i].Paths);
        }

        var components = read.Components.Select((component, i) => component.Clock with { Window = BudgetWriter.WindowOf(holdings[i]) }).ToList();
        var frames = request.Frames is { } series
            ? FrameFit.Count(
                read.Steps[(int)series.StepIndex].Time.Likely, series.IntervalS, series.HasFramesInStack ? (int)series.FramesInStack : null, ref trail)
            : ((int Frames, int? Stacks)?)null;
        var likely = LikelyBudget.Evaluate(read.Steps, components, ref trail);
        var chances = BudgetChances.Draw(read.Steps, components, read.Draws, read.Seed, cancellation);
        var response = BudgetWriter.Write(request, holdings, likely, chances, frames);
        response.Seed = read.Seed;
        context.NoteBudget(request, response, root);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

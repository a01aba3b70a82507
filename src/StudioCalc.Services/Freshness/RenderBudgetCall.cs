using Grpc.Core;
using StudioCalc.Drawing;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>RenderBudget.</content>
public sealed partial class FreshnessAdapter
{
    private static readonly FieldPath BudgetPictureRoot = FieldPath.Root(RenderBudgetRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<RenderBudgetResponse> RenderBudget(RenderBudgetRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var budget = CheckWithWorking(request.Budget, BudgetPictureRoot[RenderBudgetRequest.BudgetFieldNumber], context.CancellationToken);
        return Task.FromResult(new RenderBudgetResponse
        {
            Picture = BudgetPicture.Draw(request, budget),
            Budget = budget,
            ModelRevision = ModelRevision.Current,
        });
    }
}

using Grpc.Core;
using StudioCalc.Drawing;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>RenderCallSheet.</content>
public sealed partial class ShootPlanAdapter
{
    private static readonly FieldPath SheetRoot = FieldPath.Root(RenderCallSheetRequest.Descriptor);

    private static readonly FillPlacementAdapter Floors = new();

    /// <inheritdoc/>
    public override async Task<RenderCallSheetResponse> RenderCallSheet(RenderCallSheetRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var gathered = new RequestContext(null);
        var floor = await new PlanParts(gathered)
            .AnswerAsync(request.Floor, SheetRoot[RenderCallSheetRequest.FloorFieldNumber], one => Floors.RenderFloor(one, context))
            .ConfigureAwait(false);
        var (clock, plan) = await PlanUnderAsync(
            gathered, SheetRoot[RenderCallSheetRequest.PlanFieldNumber], new DayPlanner(request.Plan, context), static (_, _) => { })
            .ConfigureAwait(false);
        var sheet = new CallSheetInput(request, plan, floor?.Picture, clock.Local);
        return new()
        {
            Html = CallSheet.Html(sheet),
            Text = CallSheet.Text(sheet),
            Calendar = SheetCalendar.Write(request, plan, clock),
            Plan = plan,
            ModelRevision = Maths.ModelRevision.Current,
        };
    }
}

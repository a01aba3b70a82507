using Grpc.Core;
using StudioCalc.Drawing;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>RenderCooling.</content>
public sealed partial class FreshnessAdapter
{
    private static readonly FieldPath CoolingPictureRoot = FieldPath.Root(RenderCoolingRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<RenderCoolingResponse> RenderCooling(RenderCoolingRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var cooling = SimulateWithWorking(
            request.Cooling, CoolingPictureRoot[RenderCoolingRequest.CoolingFieldNumber], context.CancellationToken);
        return Task.FromResult(new RenderCoolingResponse
        {
            Picture = CoolingPicture.Draw(request, cooling),
            Cooling = cooling,
            ModelRevision = ModelRevision.Current,
        });
    }
}

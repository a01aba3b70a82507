using Grpc.Core;
using StudioCalc.Drawing;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>RenderSharpness.</content>
public sealed partial class DepthOfFieldAdapter
{
    private static readonly FieldPath RenderRoot = FieldPath.Root(RenderSharpnessRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<RenderSharpnessResponse> RenderSharpness(RenderSharpnessRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        var none = default(NoTrail);
        var focus = Place(request.Focus, RenderRoot[RenderSharpnessRequest.FocusFieldNumber], ref none);
        return Task.FromResult(new RenderSharpnessResponse
        {
            Picture = SharpnessPicture.Draw(request, focus),
            Focus = focus,
            ModelRevision = ModelRevision.Current,
        });
    }
}

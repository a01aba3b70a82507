using Grpc.Core;
using StudioCalc.Drawing;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>RenderView.</content>
public sealed partial class PlateViewAdapter
{
    private static readonly FieldPath RenderRoot = FieldPath.Root(RenderViewRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<RenderViewResponse> RenderView(RenderViewRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var path = RenderRoot[RenderViewRequest.ViewFieldNumber];
        var view = EvaluateWithWorking(request.View, path, context.CancellationToken);

        // The answer stands, so that both can be read.
        var (read, none) = (new RequestContext(scale: null), default(NoTrail));
        var scene = read.ReadScene(request.View.Scene, path[EvaluateViewRequest.SceneFieldNumber])!.Scene;
        var camera = read.ReadViewCamera(request.View.Camera, path[EvaluateViewRequest.CameraFieldNumber], ref none)!.Geometry;
        context.CancellationToken.ThrowIfCancellationRequested();
        return Task.FromResult(new RenderViewResponse
        {
            Picture = DishPicture.Draw(request, view, DishLinesWriter.Write(scene, camera)),
            View = view,
            ModelRevision = ModelRevision.Current,
        });
    }
}

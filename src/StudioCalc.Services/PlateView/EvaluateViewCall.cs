using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateView.</content>
public sealed partial class PlateViewAdapter
{
    private const uint DefaultSightLines = ViewRanking.ToldLines;
    private const int MostSightLines = 2_000_000;

    private static readonly FieldPath ViewRoot = FieldPath.Root(EvaluateViewRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateViewResponse> EvaluateView(EvaluateViewRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        return Task.FromResult(EvaluateWithWorking(request, ViewRoot, context.CancellationToken));
    }

    private static EvaluateViewResponse EvaluateWithWorking(EvaluateViewRequest request, FieldPath root, CancellationToken cancellation)
    {
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Evaluate(request, root, cancellation, ref none);
        }

        var trail = StepTrail.Start();
        var response = Evaluate(request, root, cancellation, ref trail);
        response.Working.Add(trail);
        return response;
    }

    private static EvaluateViewResponse Evaluate<TTrail>(
        EvaluateViewRequest request, FieldPath root, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(scale: null);
        var scenePath = root[EvaluateViewRequest.SceneFieldNumber];
        var scene = context.ReadScene(request.Scene, scenePath);
        var camera = context.ReadViewCamera(request.Camera, root[EvaluateViewRequest.CameraFieldNumber], ref trail);
        if (scene is not null && camera is not null)
        {
            context.CheckPlaces(scene.Scene, camera.Geometry, scenePath);
        }

        var lines = (int)(request.HasSightLines ? request.SightLines : DefaultSightLines);
        if ((long)lines * lines * (request.Scene.Components.Count + request.Scene.Vessels.Count) > MostSightLines)
        {
            context.Violations.Add(root[EvaluateViewRequest.SightLinesFieldNumber].ToString(), RefusalReason.OutOfRange,
                $"Their square times the number of things is at most {MostSightLines}.");
        }

        context.ThrowIfRefused();
        var response = ViewWriter.Response(scene!, camera!, lines, cancellation, ref trail);
        ViewNotes.Note(context, response, scene!, scenePath);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

using Grpc.Core;
using StudioCalc.Drawing;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>RenderFloor.</content>
public sealed partial class FillPlacementAdapter
{
    private static readonly FieldPath FloorRoot = FieldPath.Root(RenderFloorRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<RenderFloorResponse> RenderFloor(RenderFloorRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        return Task.FromResult(Render(request));
    }

    private static RenderFloorResponse Render(RenderFloorRequest request)
    {
        var none = default(NoTrail);
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var sources = context.ReadAll(request.Sources, FloorRoot[RenderFloorRequest.SourcesFieldNumber], ref none);
        var receivers = context.ReadAll(request.Receivers, sources, FloorRoot[RenderFloorRequest.ReceiversFieldNumber]);
        var surfaces = request.Surfaces.Select((surface, i) => context.Read(
            surface.Pose, FloorRoot[RenderFloorRequest.SurfacesFieldNumber].At(i)[BounceSurface.PoseFieldNumber])).ToList();
        Maths.CameraSettings? settings = request.Settings is null
            ? null
            : context.Read(request.Settings, FloorRoot[RenderFloorRequest.SettingsFieldNumber]);
        CheckTubes(context, request);
        context.ThrowIfRefused();

        context.NoteSources(
            sources!, [.. receivers.Select(at => at!.Value.Place)], FloorRoot[RenderFloorRequest.SourcesFieldNumber].ItemAt);
        var response = new RenderFloorResponse { ModelRevision = ModelRevision.Current };
        response.Receivers.Add(LightWriter.Write(request.Receivers, sources!, receivers, reference: 0, settings, context.Scale, ref none));
        response.Picture = FloorPicture.Draw(
            request,
            [.. sources.Select((source, i) => FloorFaceWriter.Light(source!, request.Sources[i]))],
            [.. surfaces.Select((axes, i) => FloorFaceWriter.Surface(axes!, request.Surfaces[i]))],
            response.Receivers);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void CheckTubes(RequestContext context, RenderFloorRequest request)
    {
        for (var i = 0; i < request.Occluders.Count; i++)
        {
            if (request.Occluders[i].Tube is { } tube && tube.From.Equals(tube.To))
            {
                context.Violations.Add(
                    FloorRoot[RenderFloorRequest.OccludersFieldNumber].At(i)[Occluder.TubeFieldNumber][Tube.ToFieldNumber].ToString(),
                    RefusalReason.Conflict, "Must differ from the other end.");
            }
        }
    }
}

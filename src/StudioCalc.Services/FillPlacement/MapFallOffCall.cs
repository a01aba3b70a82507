using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>MapFallOff.</content>
public sealed partial class FillPlacementAdapter
{
    private static readonly FieldPath MapRoot = FieldPath.Root(MapFallOffRequest.Descriptor);
    private static readonly FieldPath MapSources = MapRoot[MapFallOffRequest.SourcesFieldNumber];

    /// <inheritdoc/>
    public override Task<MapFallOffResponse> MapFallOff(MapFallOffRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Map(request, ref none, context.CancellationToken));
        }

        var trail = StepTrail.Start();
        var response = Map(request, ref trail, context.CancellationToken);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static MapFallOffResponse Map<TTrail>(MapFallOffRequest request, ref TTrail trail, CancellationToken cancellation)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(scale: null);
        var sources = context.ReadAll(request.Sources, MapSources, ref trail);
        var area = new FallOffArea(
            request.Centre?.ToVector() ?? default, request.WidthMm, request.DepthMm, (int)request.Columns, (int)request.Rows);
        var facing = ReadFacing(context, request, sources, area);
        var collector = request.Kind == ReceiverKind.Dome ? Collector.Dome : Collector.Flat;
        RefusePointsInArea(context, sources, area);
        var time = ReadMapTime(context, request, sources);
        context.ThrowIfRefused();

        trail.Section("fall-off");
        var faces = sources.Select(source => WeighedFace.Of(source!.Face, source.Level, collector, time ?? 1)).ToList();
        var map = FallOffMap.Of(area, faces, facing!.Value, collector, ref trail, cancellation);
        context.NoteSources(sources!, [area.Middle, area.Front, area.Back, area.Left, area.Right], MapSources.ItemAt);
        var response = MapWriter.Write(map);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static AreaFacing? ReadFacing(
        RequestContext context, MapFallOffRequest request, IReadOnlyList<SourceRead?> sources, FallOffArea area)
    {
        switch (request.FacingCase)
        {
            case MapFallOffRequest.FacingOneofCase.Up:
                return context.IsTrue(request.Up, MapRoot[MapFallOffRequest.UpFieldNumber]) ? new(Vector.Up, IsPlace: false) : null;
            case MapFallOffRequest.FacingOneofCase.Direction:
                return new(Vector.Towards(request.Direction.AzimuthDeg, request.Direction.ElevationDeg), IsPlace: false);
        }

        var path = MapRoot[MapFallOffRequest.SourceIndexFieldNumber];
        if (request.SourceIndex >= sources.Count)
        {
            context.Violations.Add(path.ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"There is no such source; the last one has index {sources.Count - 1}."));
            return null;
        }

        if (sources[(int)request.SourceIndex] is not { } faced)
        {
            return null;
        }

        if (!faced.Face.IsPoint && area.Holds(faced.Face.Axes.Centre))
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict,
                "The middle of this source is one of the points, which cannot face itself.");
            return null;
        }

        return new(faced.Face.Axes.Centre, IsPlace: true);
    }

    private static void RefusePointsInArea(RequestContext context, IReadOnlyList<SourceRead?> sources, FallOffArea area)
    {
        for (var i = 0; i < sources.Count; i++)
        {
            if (sources[i] is { Face.IsPoint: true } source && area.Holds(source.Face.Axes.Centre))
            {
                context.Violations.Add(
                    MapSources.At(i)[LightSource.PoseFieldNumber][Pose.PositionFieldNumber].ToString(), RefusalReason.Conflict,
                    "A point must not stand where the light is told.");
            }
        }
    }

    private static double? ReadMapTime(RequestContext context, MapFallOffRequest request, IReadOnlyList<SourceRead?> sources)
    {
        var path = MapRoot[MapFallOffRequest.ShutterSpeedFieldNumber];
        if (request.ShutterSpeed is not null)
        {
            return context.Read(request.ShutterSpeed, path);
        }

        if (sources.Any(source => source?.Level?.IsFlash == true) && sources.Any(source => source?.Level?.IsFlash == false))
        {
            context.Violations.Add(path.ToString(), RefusalReason.Required,
                "Flash and light that stays on are added at a shutter speed.");
        }

        return null;
    }
}

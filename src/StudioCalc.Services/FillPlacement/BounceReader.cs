using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A request for a bounce, read.</summary>
internal sealed record BounceRead(
    IReadOnlyList<SourceRead> Sources,
    BounceFace Surface,
    double Reflectance,
    bool IsMirror,
    LightPoint Receiver,
    LightPoint Direct)
{
    /// <summary>Each face with its luminance or intensity; 1 where that is not told.</summary>
    public IReadOnlyList<(LightFace Face, double Strength)> Lights { get; } =
        [.. Sources.Select(source => (source.Face, source.Level?.Strength ?? 1))];

    /// <summary>The unit of light.</summary>
    public string Unit => Sources[0].Level switch { null => "", { IsFlash: true } => "lx s", _ => "lx" };
}

/// <summary>Reads requests for a bounce.</summary>
internal static class BounceReader
{
    private static readonly FieldPath Root = FieldPath.Root(EvaluateBounceRequest.Descriptor);

    /// <exception cref="Grpc.Core.RpcException">Any field is bad.</exception>
    public static BounceRead Read<TTrail>(RequestContext context, EvaluateBounceRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var sources = context.ReadAll(request.Sources, Root[EvaluateBounceRequest.SourcesFieldNumber], ref trail);
        var path = Root[EvaluateBounceRequest.SurfaceFieldNumber];
        var axes = context.Read(request.Surface.Pose, path[BounceSurface.PoseFieldNumber]);
        var surface = axes is null ? null : new BounceFace(axes, request.Surface.WidthMm, request.Surface.HeightMm);
        CheckKinds(context, sources);
        CheckPoints(context, sources, surface);
        var receiver = context.Read(request.Receiver, sources, Root[EvaluateBounceRequest.ReceiverFieldNumber]);
        var direct = request.DirectReceiver is null
            ? TowardsFirst(context, receiver, sources[0])
            : context.Read(request.DirectReceiver, sources, Root[EvaluateBounceRequest.DirectReceiverFieldNumber]);
        context.ThrowIfRefused();

        return new(
            [.. sources.Select(source => source!)],
            surface!,
            request.Surface.HasReflectance ? request.Surface.Reflectance : Usual(request.Surface.Surface),
            request.Surface.Surface == SurfaceKind.Mirror,
            receiver!.Value,
            direct!.Value);
    }

    private static void CheckKinds(RequestContext context, IReadOnlyList<SourceRead?> sources)
    {
        for (var i = 1; i < sources.Count; i++)
        {
            if (sources[0]?.Level is { } first && sources[i]?.Level is { } level && level.IsFlash != first.IsFlash)
            {
                context.Violations.Add(
                    Root[EvaluateBounceRequest.SourcesFieldNumber].At(i)[LightSource.CalibrationFieldNumber].ToString(),
                    RefusalReason.Conflict,
                    "Flash and light that stays on cannot be added here: send them one by one.");
            }
        }
    }

    private static void CheckPoints(RequestContext context, IReadOnlyList<SourceRead?> sources, BounceFace? surface)
    {
        for (var i = 0; i < sources.Count; i++)
        {
            if (sources[i] is { Face.IsPoint: true } source && surface?.Holds(source.Face.Axes.Centre) == true)
            {
                context.Violations.Add(
                    Root[EvaluateBounceRequest.SourcesFieldNumber].At(i)[LightSource.PoseFieldNumber][Pose.PositionFieldNumber].ToString(),
                    RefusalReason.Conflict,
                    "A point must not lie on the surface.");
            }
        }
    }

    private static LightPoint? TowardsFirst(RequestContext context, LightPoint? receiver, SourceRead? first)
    {
        if (receiver is not { } at || first is null)
        {
            return null;
        }

        var way = first.Face.Axes.Centre - at.Place;
        if (way.Length > 0)
        {
            return at with { Normal = way.Unit() };
        }

        context.Violations.Add(Root[EvaluateBounceRequest.DirectReceiverFieldNumber].ToString(), RefusalReason.Required,
            "The receiver is in the middle of the first source: say where the direct light is told.");
        return null;
    }

    private static double Usual(SurfaceKind kind) => kind switch
    {
        SurfaceKind.WhiteCard => 0.85,
        SurfaceKind.WhitePaint => 0.8,
        SurfaceKind.WhiteTiles => 0.7,
        SurfaceKind.MidGrey => 0.2,
        SurfaceKind.Concrete => 0.3,
        SurfaceKind.BlackCard => 0.045,
        SurfaceKind.Mirror => 0.85,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}

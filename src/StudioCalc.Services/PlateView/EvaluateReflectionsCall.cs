using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateReflections.</content>
public sealed partial class PlateViewAdapter
{
    private const double UsualCardDistanceMm = 400;
    private const int UsualMirrorLines = 64;
    private const int MostTraces = 40_000_000;

    private static readonly FieldPath MirrorLinesPath =
        FieldPath.Root(EvaluateReflectionsRequest.Descriptor)[EvaluateReflectionsRequest.SightLinesFieldNumber];

    /// <inheritdoc/>
    public override Task<EvaluateReflectionsResponse> EvaluateReflections(EvaluateReflectionsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        var stop = context?.CancellationToken ?? CancellationToken.None;
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Evaluate(request, stop, ref none));
        }

        var trail = StepTrail.Start();
        var response = Evaluate(request, stop, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EvaluateReflectionsResponse Evaluate<TTrail>(EvaluateReflectionsRequest request, CancellationToken stop, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var (surfaces, things) = ReflectionsReader.Read(context, request);
        var lines = request.HasSightLines ? (int)request.SightLines : UsualMirrorLines;
        if (surfaces.Sum(surface => (long)lines * lines * (surface.Shape.WaveDeg > 0 ? MirrorView.Slopes : 1) * things.Count) > MostTraces)
        {
            context.Violations.Add(MirrorLinesPath.ToString(), RefusalReason.OutOfRange,
                $"Over all surfaces their square, sixteenfold on waving ones, times the number of things is at most {MostTraces}.");
            context.ThrowIfRefused();
        }

        var writer = new ReflectionsWriter(context, things, request.Camera.ToVector(), request.HasCardDistanceMm ? request.CardDistanceMm : UsualCardDistanceMm);
        var response = new EvaluateReflectionsResponse { ModelRevision = ModelRevision.Current };
        for (var i = 0; i < surfaces.Count; i++)
        {
            trail.Section(surfaces[i].Name);
            response.Surfaces.Add(writer.Write(surfaces[i], lines, FormattableString.Invariant($"surfaces[{i}]"), stop, ref trail));
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }
}

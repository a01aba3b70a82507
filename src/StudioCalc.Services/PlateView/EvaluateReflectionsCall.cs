using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateReflections.</content>
public sealed partial class PlateViewAdapter
{
    private const double UsualCardDistanceMm = 400;
    private const int UsualMirrorLines = 64;

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
        var writer = new ReflectionsWriter(context, things, request.Camera.ToVector(), request.HasCardDistanceMm ? request.CardDistanceMm : UsualCardDistanceMm);
        var response = new EvaluateReflectionsResponse { ModelRevision = ModelRevision.Current };
        var lines = request.HasSightLines ? (int)request.SightLines : UsualMirrorLines;
        for (var i = 0; i < surfaces.Count; i++)
        {
            trail.Section(surfaces[i].Name);
            response.Surfaces.Add(writer.Write(surfaces[i], lines, FormattableString.Invariant($"surfaces[{i}]"), stop, ref trail));
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }
}

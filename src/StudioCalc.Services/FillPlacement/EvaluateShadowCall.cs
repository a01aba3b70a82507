using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateShadow.</content>
public sealed partial class FillPlacementAdapter
{
    private const int UsualCells = 24;

    private static readonly FieldPath ShadowRoot = FieldPath.Root(EvaluateShadowRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateShadowResponse> EvaluateShadow(EvaluateShadowRequest request, ServerCallContext context)
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

    private static EvaluateShadowResponse Evaluate<TTrail>(EvaluateShadowRequest request, CancellationToken stop, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var sources = context.ReadAll(request.Sources, ShadowRoot[EvaluateShadowRequest.SourcesFieldNumber], ref trail);
        var occluders = context.ReadAll(request.Occluders, ShadowRoot[EvaluateShadowRequest.OccludersFieldNumber]);
        var receivers = context.ReadAll(request.Receivers, sources, ShadowRoot[EvaluateShadowRequest.ReceiversFieldNumber]);
        var time = ReadTime(context, request, sources);
        context.ThrowIfRefused();

        var response = new EvaluateShadowResponse { ModelRevision = ModelRevision.Current };
        for (var i = 0; i < receivers.Count; i++)
        {
            var name = request.Receivers[i].HasName ? request.Receivers[i].Name : "";
            var field = FormattableString.Invariant($"receivers[{i}].");
            response.Receivers.Add(Shade(
                name, sources!, occluders!, receivers[i]!.Value, time ?? 1, request.HasCells ? (int)request.Cells : UsualCells, field, stop, ref trail));
        }

        context.NoteSources(
            sources!, [.. receivers.Select(at => at!.Value.Place)], ShadowRoot[EvaluateShadowRequest.SourcesFieldNumber].ItemAt);
        var worst = response.Receivers.Max(receiver => receiver.Sources.Max(source => source.ShadedShareError));
        if (worst > Advise.RoughShare)
        {
            context.Advisories.Add(Advise.CoarseCells("cells", worst));
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static double? ReadTime(RequestContext context, EvaluateShadowRequest request, IReadOnlyList<SourceRead?> sources)
    {
        var path = ShadowRoot[EvaluateShadowRequest.ShutterSpeedFieldNumber];
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

    private static ShadedReceiver Shade<TTrail>(
        string name,
        IReadOnlyList<SourceRead> sources,
        IReadOnlyList<LightBlocker> occluders,
        LightPoint at,
        double time,
        int cells,
        string field,
        CancellationToken stop,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var answer = new ShadedReceiver { Name = name };
        var (all, left) = (0.0, 0.0);
        for (var i = 0; i < sources.Count; i++)
        {
            stop.ThrowIfCancellationRequested();
            trail.Section(sources[i].Name.Length > 0 ? sources[i].Name : FormattableString.Invariant($"source {i}"));
            var shadow = FaceShadow.Trace(sources[i].Face, occluders, at, cells);
            answer.Sources.Add(Write(shadow, FormattableString.Invariant($"{field}sources[{i}]."), ref trail));
            var weight = Weight(sources[i].Level, at.Collector, time);
            (all, left) = (all + weight * shadow.Light, left + weight * shadow.Left);
        }

        trail.Section("all sources");
        if (ShadowSum.ChangeStops(all, left, ref trail, field + "change_stops") is { } change)
        {
            answer.ChangeStops = change;
        }

        answer.ShadedShare = ShadowSum.Share(all, left, ref trail, field + "shaded_share");
        return answer;
    }

    private static SourceShadow Write<TTrail>(FaceShadow shadow, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var answer = new SourceShadow
        {
            ShadedShare = ShadowSum.Share(shadow.Light, shadow.Left, ref trail, field + "shaded_share"),
            ShadedShareError = trail.Given("error", shadow.ShareError, "", "fill placement (82), bound by the cells", field + "shaded_share_error"),
        };
        if (ShadowSum.ChangeStops(shadow.Light, shadow.Left, ref trail, field + "change_stops") is { } change)
        {
            answer.ChangeStops = change;
        }

        answer.OccluderIndices.Add(Enumerable.Range(0, shadow.Blocking.Count).Where(i => shadow.Blocking[i]).Select(i => (uint)i));
        return answer;
    }

    // What a meter tells of one unit of light.
    private static double Weight(SourceLevel? level, Collector collector, double time)
    {
        if (level is null)
        {
            return 1;
        }

        var none = default(NoTrail);
        return level.Metered(level.At(1, ref none), collector, ref none) * (level.IsFlash ? 1 : time);
    }
}

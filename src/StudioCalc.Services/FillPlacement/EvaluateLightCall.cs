using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateLight.</content>
public sealed partial class FillPlacementAdapter
{
    private static readonly FieldPath LightRoot = FieldPath.Root(EvaluateLightRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateLightResponse> EvaluateLight(EvaluateLightRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Evaluate(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Evaluate(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EvaluateLightResponse Evaluate<TTrail>(EvaluateLightRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var sources = context.ReadAll(request.Sources, LightRoot[EvaluateLightRequest.SourcesFieldNumber], ref trail);
        var receivers = context.ReadAll(request.Receivers, sources, LightRoot[EvaluateLightRequest.ReceiversFieldNumber]);
        Maths.CameraSettings? settings = request.Settings is null
            ? null
            : context.Read(request.Settings, LightRoot[EvaluateLightRequest.SettingsFieldNumber]);
        var reference = (int)request.ReferenceIndex;
        if (reference >= receivers.Count)
        {
            context.Violations.Add(LightRoot[EvaluateLightRequest.ReferenceIndexFieldNumber].ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"There is no such receiver; the last one has index {receivers.Count - 1}."));
        }

        context.ThrowIfRefused();

        context.NoteSources(
            sources!, [.. receivers.Select(at => at!.Value.Place)], LightRoot[EvaluateLightRequest.SourcesFieldNumber].ItemAt);
        var response = new EvaluateLightResponse { ModelRevision = ModelRevision.Current };
        response.Receivers.Add(LightWriter.Write(request.Receivers, sources!, receivers!, reference, settings, context.Scale, ref trail));
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

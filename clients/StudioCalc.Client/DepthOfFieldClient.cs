using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>Depth of field, focus and framing.</summary>
public class DepthOfFieldClient
{
    private readonly CallPath _calls;
    private readonly DepthOfFieldService.DepthOfFieldServiceClient _service;

    internal DepthOfFieldClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected DepthOfFieldClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Evaluates where the sharp zone lies, and how blurred points before and behind it are.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateDepthOfFieldResponse> EvaluateDepthOfFieldAsync(EvaluateDepthOfFieldRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateDepthOfFieldAsync, request, cancellationToken);

    /// <summary>Solves for the aperture and focus that hold a near and a far point, with diffraction counted.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SolveApertureResponse> SolveApertureAsync(SolveApertureRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SolveApertureAsync, request, cancellationToken);

    /// <summary>Places focus on a plate: what keeps the main component sharp, and how blurred each other one becomes.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<PlaceFocusResponse> PlaceFocusAsync(PlaceFocusRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.PlaceFocusAsync, request, cancellationToken);

    /// <summary>Plans a focus stack by focusing rail or focus ring: frames, positions, and time.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<PlanFocusStackResponse> PlanFocusStackAsync(PlanFocusStackRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.PlanFocusStackAsync, request, cancellationToken);

    /// <summary>Estimates the chance that a frame is sharp, and the frames that give a sharp one with a wanted confidence.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EstimateKeepersResponse> EstimateKeepersAsync(EstimateKeepersRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EstimateKeepersAsync, request, cancellationToken);

    /// <summary>Solves for the tilt that lays the plane of focus on the table or along two points.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SolveTiltResponse> SolveTiltAsync(SolveTiltRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SolveTiltAsync, request, cancellationToken);

    /// <summary>Evaluates framing: field, angle of view, distances, relative sizes, and what delivery crops leave.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateFramingResponse> EvaluateFramingAsync(EvaluateFramingRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateFramingAsync, request, cancellationToken);

    /// <summary>Lists sensor formats by their dimensions.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<ListSensorFormatsResponse> ListSensorFormatsAsync(ListSensorFormatsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.ListSensorFormatsAsync, request, cancellationToken);

    /// <summary>Renders sharpness over a plate, to scale, from above and in section.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<RenderSharpnessResponse> RenderSharpnessAsync(RenderSharpnessRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.RenderSharpnessAsync, request, cancellationToken);
}

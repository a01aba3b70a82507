using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>Exposure of camera settings and of light.</summary>
public class ExposureClient
{
    private readonly CallPath _calls;
    private readonly ExposureService.ExposureServiceClient _service;

    internal ExposureClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected ExposureClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Evaluates camera settings, a light reading, or one against the other.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateExposureResponse> EvaluateExposureAsync(EvaluateExposureRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateExposureAsync, request, cancellationToken);

    /// <summary>Solves for aperture, shutter speed or ISO: the one of the three that the request leaves out.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SolveExposureResponse> SolveExposureAsync(SolveExposureRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SolveExposureAsync, request, cancellationToken);

    /// <summary>Lists the settings that admit the same exposure, within the limits of a camera and of motion.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<ListEquivalentSettingsResponse> ListEquivalentSettingsAsync(ListEquivalentSettingsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.ListEquivalentSettingsAsync, request, cancellationToken);

    /// <summary>Converts a mark to its exact value, and the value to the nearest marks of every scale.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<ConvertMarkResponse> ConvertMarkAsync(ConvertMarkRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.ConvertMarkAsync, request, cancellationToken);

    /// <summary>Solves for distance, aperture, ISO, power or pops of flash from guide numbers.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SolveFlashResponse> SolveFlashAsync(SolveFlashRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SolveFlashAsync, request, cancellationToken);

    /// <summary>Evaluates how many stops are left before a surface clips.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateHeadroomResponse> EvaluateHeadroomAsync(EvaluateHeadroomRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateHeadroomAsync, request, cancellationToken);

    /// <summary>Finds the slowest shutter speed, or the longest flash, that keeps a motion within a permitted blur.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<FreezeMotionResponse> FreezeMotionAsync(FreezeMotionRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.FreezeMotionAsync, request, cancellationToken);

    /// <summary>Estimates the interval between flash frames, and the frames that a charge gives.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EstimateRecyclingResponse> EstimateRecyclingAsync(EstimateRecyclingRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EstimateRecyclingAsync, request, cancellationToken);

    /// <summary>Lists the shutter speeds that show no bands under light that flickers with the mains.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<ListFlickerFreeSpeedsResponse> ListFlickerFreeSpeedsAsync(ListFlickerFreeSpeedsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.ListFlickerFreeSpeedsAsync, request, cancellationToken);

    /// <summary>Matches one light to the colour temperature of another: the shift, and the gel that makes it.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<MatchColourResponse> MatchColourAsync(MatchColourRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.MatchColourAsync, request, cancellationToken);
}

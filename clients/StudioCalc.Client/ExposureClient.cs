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
}

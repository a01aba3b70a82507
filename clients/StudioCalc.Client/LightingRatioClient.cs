using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>Ratios between lights.</summary>
public class LightingRatioClient
{
    private readonly CallPath _calls;
    private readonly LightingRatioService.LightingRatioServiceClient _service;

    internal LightingRatioClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected LightingRatioClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Balances a flash fill against a continuous back light, one variable at a time.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<BalanceFillResponse> BalanceFillAsync(BalanceFillRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.BalanceFillAsync, request, cancellationToken);
}

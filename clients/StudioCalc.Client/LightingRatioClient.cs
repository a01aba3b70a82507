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

    /// <summary>Compares two lights: the stops between them, and the ratio in both conventions.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<CompareReadingsResponse> CompareReadingsAsync(CompareReadingsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.CompareReadingsAsync, request, cancellationToken);

    /// <summary>Combines any number of lights at one place in linear light, and tells the share of each.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<CombineReadingsResponse> CombineReadingsAsync(CombineReadingsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.CombineReadingsAsync, request, cancellationToken);

    /// <summary>Separates flash from daylight: the flash alone from a reading of both and one of the daylight.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SeparateFlashResponse> SeparateFlashAsync(SeparateFlashRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SeparateFlashAsync, request, cancellationToken);

    /// <summary>Follows daylight that has changed: the shutter speed that keeps ratio and exposure with the flash untouched,
    /// the drift, and when the ratio leaves a tolerance.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<FollowBackLightResponse> FollowBackLightAsync(FollowBackLightRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.FollowBackLightAsync, request, cancellationToken);
}

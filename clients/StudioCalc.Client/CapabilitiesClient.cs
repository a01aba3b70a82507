using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>What the host can do and how far.</summary>
public class CapabilitiesClient
{
    private readonly CallPath _calls;
    private readonly CapabilitiesService.CapabilitiesServiceClient _service;

    internal CapabilitiesClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected CapabilitiesClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Gets limits, catalogue versions, model revision and build.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<GetCapabilitiesResponse> GetCapabilitiesAsync(GetCapabilitiesRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.GetCapabilitiesAsync, request, cancellationToken);
}

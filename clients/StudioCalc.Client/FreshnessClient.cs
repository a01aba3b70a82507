using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>How long plated food keeps its looks, and whether the shoot fits.</summary>
public class FreshnessClient
{
    private readonly CallPath _calls;
    private readonly FreshnessService.FreshnessServiceClient _service;

    internal FreshnessClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected FreshnessClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Lists the holding profiles of the catalogue, each with its source.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<ListHoldingProfilesResponse> ListHoldingProfilesAsync(ListHoldingProfilesRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.ListHoldingProfilesAsync, request, cancellationToken);

    /// <summary>Estimates how long a component of a dish keeps its looks.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EstimateHoldingTimeResponse> EstimateHoldingTimeAsync(EstimateHoldingTimeRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EstimateHoldingTimeAsync, request, cancellationToken);

    /// <summary>Simulates cooling or warming: temperatures over time with the events on the way.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SimulateCoolingResponse> SimulateCoolingAsync(SimulateCoolingRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SimulateCoolingAsync, request, cancellationToken);

    /// <summary>Checks whether every component holds through the steps of a shot, and with what chance.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<CheckBudgetResponse> CheckBudgetAsync(CheckBudgetRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.CheckBudgetAsync, request, cancellationToken);

    /// <summary>Checks time and temperature of food against published food-safety regimes. It never tells that food is safe.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<CheckFoodSafetyResponse> CheckFoodSafetyAsync(CheckFoodSafetyRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.CheckFoodSafetyAsync, request, cancellationToken);

    /// <summary>Renders temperatures over time with the events on the way.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<RenderCoolingResponse> RenderCoolingAsync(RenderCoolingRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.RenderCoolingAsync, request, cancellationToken);

    /// <summary>Renders a budget as a timeline: steps, and the window of each component.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<RenderBudgetResponse> RenderBudgetAsync(RenderBudgetRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.RenderBudgetAsync, request, cancellationToken);
}

using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>Order, times and promises of a day of shooting.</summary>
public class ShootPlanClient
{
    private readonly CallPath _calls;
    private readonly ShootPlanService.ShootPlanServiceClient _service;

    internal ShootPlanClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected ShootPlanClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Puts a day in order and tells when the kitchen fires each plate.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SequenceShootResponse> SequenceShootAsync(SequenceShootRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SequenceShootAsync, request, cancellationToken);

    /// <summary>Estimates shots per hour and the end of the day, what binds it, and what one change buys.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EstimateThroughputResponse> EstimateThroughputAsync(EstimateThroughputRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EstimateThroughputAsync, request, cancellationToken);

    /// <summary>Quotes a day from as little as a number of dishes.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<QuoteShootResponse> QuoteShootAsync(QuoteShootRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.QuoteShootAsync, request, cancellationToken);

    /// <summary>Estimates how many plates of a dish to order.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EstimatePortionsResponse> EstimatePortionsAsync(EstimatePortionsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EstimatePortionsAsync, request, cancellationToken);

    /// <summary>Plans a shoot: light, view, focus and budgets, order and times.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<PlanShootResponse> PlanShootAsync(PlanShootRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.PlanShootAsync, request, cancellationToken);

    /// <summary>Plans a shoot and tells of the progress on the way; the last message holds the plan.</summary>
    /// <returns>The messages as they come. The call starts when the first is asked for; letting go of them ends it.</returns>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no plan.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual IAsyncEnumerable<StreamPlanResponse> StreamPlanAsync(StreamPlanRequest request, CancellationToken cancellationToken = default) =>
        _calls.StreamAsync(_service.StreamPlan, request, cancellationToken);

    /// <summary>Replans from what has happened so far.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<ReplanShootResponse> ReplanShootAsync(ReplanShootRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.ReplanShootAsync, request, cancellationToken);

    /// <summary>Estimates cards, backup time and upload time.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EstimateHandoverResponse> EstimateHandoverAsync(EstimateHandoverRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EstimateHandoverAsync, request, cancellationToken);

    /// <summary>Checks what hangs on one electric circuit. An electrician has the last word.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<CheckCircuitResponse> CheckCircuitAsync(CheckCircuitRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.CheckCircuitAsync, request, cancellationToken);

    /// <summary>Renders the call sheet as a page, as plain text and as a calendar.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<RenderCallSheetResponse> RenderCallSheetAsync(RenderCallSheetRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.RenderCallSheetAsync, request, cancellationToken);
}

using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>What a camera angle shows of a dish.</summary>
public class PlateViewClient
{
    private readonly CallPath _calls;
    private readonly PlateViewService.PlateViewServiceClient _service;

    internal PlateViewClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected PlateViewClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Evaluates how much of the content of a round bowl, plate or glass shows over its rim, in closed form.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateBowlResponse> EvaluateBowlAsync(EvaluateBowlRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateBowlAsync, request, cancellationToken);

    /// <summary>Evaluates how much of a thing shows behind another one in front of it, in closed form.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateSightLineResponse> EvaluateSightLineAsync(EvaluateSightLineRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateSightLineAsync, request, cancellationToken);

    /// <summary>Evaluates what a camera sees of a dish, what hides it, and whether the main component leads the picture.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateViewResponse> EvaluateViewAsync(EvaluateViewRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateViewAsync, request, cancellationToken);

    /// <summary>Ranks camera angles, and turns of the plate, by stated weights.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<RankViewsResponse> RankViewsAsync(RankViewsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.RankViewsAsync, request, cancellationToken);

    /// <summary>Suggests which component to move, and by how much, so that everything shows.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SuggestMoveResponse> SuggestMoveAsync(SuggestMoveRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SuggestMoveAsync, request, cancellationToken);

    /// <summary>Evaluates what mirrors in glossy surfaces, and where a black card would go.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateReflectionsResponse> EvaluateReflectionsAsync(EvaluateReflectionsRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateReflectionsAsync, request, cancellationToken);

    /// <summary>Renders the view as a line drawing, with a plan from above.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<RenderViewResponse> RenderViewAsync(RenderViewRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.RenderViewAsync, request, cancellationToken);
}

using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>Where lights, window, card and table stand, and what they give there.</summary>
public class FillPlacementClient
{
    private readonly CallPath _calls;
    private readonly FillPlacementService.FillPlacementServiceClient _service;

    internal FillPlacementClient(CallPath calls) => (_calls, _service) = (calls, new(calls.Invoker));

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected FillPlacementClient()
        : this(CallPath.Unanswered)
    {
    }

    /// <summary>Evaluates the light of any number of sources at any number of receivers.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateLightResponse> EvaluateLightAsync(EvaluateLightRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateLightAsync, request, cancellationToken);

    /// <summary>Solves for the distance of a source that gives a wanted change or reading.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<SolveDistanceResponse> SolveDistanceAsync(SolveDistanceRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.SolveDistanceAsync, request, cancellationToken);

    /// <summary>Plans a fill: the pairs of power and distance that give the wanted light, with band, softness and fall-off.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<PlanFillResponse> PlanFillAsync(PlanFillRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.PlanFillAsync, request, cancellationToken);

    /// <summary>Maps the fall-off of light over a plate or table as a grid of stops.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<MapFallOffResponse> MapFallOffAsync(MapFallOffRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.MapFallOffAsync, request, cancellationToken);

    /// <summary>Fits a source to readings at two or more distances.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<FitSourceResponse> FitSourceAsync(FitSourceRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.FitSourceAsync, request, cancellationToken);

    /// <summary>Evaluates window light at the plate, and what moving table or plate changes.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateWindowResponse> EvaluateWindowAsync(EvaluateWindowRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateWindowAsync, request, cancellationToken);

    /// <summary>Tracks the sun through a window over a day: when its direct beam reaches the plate.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<TrackSunResponse> TrackSunAsync(TrackSunRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.TrackSunAsync, request, cancellationToken);

    /// <summary>Evaluates a bounce: what a card, wall or ceiling sends to the plate, and what a black card takes.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateBounceResponse> EvaluateBounceAsync(EvaluateBounceRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateBounceAsync, request, cancellationToken);

    /// <summary>Evaluates shadows: how far camera, stand or a tall component shades the plate from its lights.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EvaluateShadowResponse> EvaluateShadowAsync(EvaluateShadowRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EvaluateShadowAsync, request, cancellationToken);

    /// <summary>Estimates how meter and tape errors carry into distance and ratio.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<EstimatePlacementErrorResponse> EstimatePlacementErrorAsync(EstimatePlacementErrorRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.EstimatePlacementErrorAsync, request, cancellationToken);

    /// <summary>Renders a floor sketch of lights, table, plate and camera: plan and side view to scale.</summary>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<RenderFloorResponse> RenderFloorAsync(RenderFloorRequest request, CancellationToken cancellationToken = default) =>
        _calls.RunAsync(_service.RenderFloorAsync, request, cancellationToken);
}

using StudioCalc.Tests;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>The sample requests of the documentation, each time as a new object.</summary>
internal static class Examples
{
    public static EvaluateExposureRequest Exposure() => Read<EvaluateExposureRequest>("evaluate-exposure.json");

    public static PlanShootRequest Plan() => Read<PlanShootRequest>("plan-shoot.json");

    public static StreamPlanRequest StreamedPlan() => Read<StreamPlanRequest>("stream-plan.json");

    public static RenderCallSheetRequest CallSheet() => Read<RenderCallSheetRequest>("render-call-sheet.json");

    public static BalanceFillRequest Balance() => Read<BalanceFillRequest>("balance-fill.json");

    public static CompareReadingsRequest Compare() => Read<CompareReadingsRequest>("compare-readings.json");

    public static CombineReadingsRequest Combine() => Read<CombineReadingsRequest>("combine-readings.json");

    public static SeparateFlashRequest Separate() => Read<SeparateFlashRequest>("separate-flash.json");

    public static FollowBackLightRequest Follow() => Read<FollowBackLightRequest>("follow-back-light.json");

    public static SolveExposureRequest Solve() => Read<SolveExposureRequest>("solve-exposure.json");

    public static ListEquivalentSettingsRequest Equivalents() => Read<ListEquivalentSettingsRequest>("list-equivalent-settings.json");

    public static EvaluateHeadroomRequest Headroom() => Read<EvaluateHeadroomRequest>("evaluate-headroom.json");

    public static SolveFlashRequest Flash() => Read<SolveFlashRequest>("solve-flash.json");

    public static FreezeMotionRequest Freeze() => Read<FreezeMotionRequest>("freeze-motion.json");

    public static EstimateRecyclingRequest Recycling() => Read<EstimateRecyclingRequest>("estimate-recycling.json");

    public static ListFlickerFreeSpeedsRequest Flicker() => Read<ListFlickerFreeSpeedsRequest>("list-flicker-free-speeds.json");

    public static MatchColourRequest Colour() => Read<MatchColourRequest>("match-colour.json");

    public static EvaluateDepthOfFieldRequest DepthOfField() => Read<EvaluateDepthOfFieldRequest>("evaluate-depth-of-field.json");

    public static SolveApertureRequest SolveAperture() => Read<SolveApertureRequest>("solve-aperture.json");

    public static PlaceFocusRequest PlaceFocus() => Read<PlaceFocusRequest>("place-focus.json");

    public static EvaluateFramingRequest Framing() => Read<EvaluateFramingRequest>("evaluate-framing.json");

    public static PlanFocusStackRequest Stack() => Read<PlanFocusStackRequest>("plan-focus-stack.json");

    public static EstimateKeepersRequest Keepers() => Read<EstimateKeepersRequest>("estimate-keepers.json");

    public static SolveTiltRequest Tilt() => Read<SolveTiltRequest>("solve-tilt.json");

    public static SolveDistanceRequest SolveDistance() => Read<SolveDistanceRequest>("solve-distance.json");

    public static PlanFillRequest PlanFill() => Read<PlanFillRequest>("plan-fill.json");

    public static EvaluateWindowRequest Window() => Read<EvaluateWindowRequest>("evaluate-window.json");

    public static TrackSunRequest Sun() => Read<TrackSunRequest>("track-sun.json");

    public static EvaluateLightRequest Light() => Read<EvaluateLightRequest>("evaluate-light.json");

    public static MapFallOffRequest FallOff() => Read<MapFallOffRequest>("map-fall-off.json");

    public static FitSourceRequest Fit() => Read<FitSourceRequest>("fit-source.json");

    public static EstimatePlacementErrorRequest PlacementError() => Read<EstimatePlacementErrorRequest>("estimate-placement-error.json");

    public static RenderFloorRequest Floor() => Read<RenderFloorRequest>("render-floor.json");

    public static EvaluateBounceRequest Bounce() => Read<EvaluateBounceRequest>("evaluate-bounce.json");

    public static EvaluateShadowRequest Shadow() => Read<EvaluateShadowRequest>("evaluate-shadow.json");

    public static CheckBudgetRequest Budget() => Read<CheckBudgetRequest>("check-budget.json");

    public static EstimateHoldingTimeRequest Holding() => Read<EstimateHoldingTimeRequest>("estimate-holding-time.json");

    public static SimulateCoolingRequest Cooling() => Read<SimulateCoolingRequest>("simulate-cooling.json");

    public static CheckFoodSafetyRequest Safety() => Read<CheckFoodSafetyRequest>("check-food-safety.json");

    public static EvaluateViewRequest View() => Read<EvaluateViewRequest>("evaluate-view.json");

    public static EvaluateBowlRequest Bowl() => Read<EvaluateBowlRequest>("evaluate-bowl.json");

    public static EvaluateSightLineRequest SightLine() => Read<EvaluateSightLineRequest>("evaluate-sight-line.json");

    public static EvaluateReflectionsRequest Reflections() => Read<EvaluateReflectionsRequest>("evaluate-reflections.json");

    public static RankViewsRequest Rank() => Read<RankViewsRequest>("rank-views.json");

    public static SuggestMoveRequest Move() => Read<SuggestMoveRequest>("suggest-move.json");

    public static RenderViewRequest Render() => Read<RenderViewRequest>("render-view.json");

    public static QuoteShootRequest Quote() => Read<QuoteShootRequest>("quote-shoot.json");

    public static EstimateThroughputRequest Throughput() => Read<EstimateThroughputRequest>("estimate-throughput.json");

    public static EstimatePortionsRequest Portions() => Read<EstimatePortionsRequest>("estimate-portions.json");

    public static EstimateHandoverRequest Handover() => Read<EstimateHandoverRequest>("estimate-handover.json");

    public static CheckCircuitRequest Circuit() => Read<CheckCircuitRequest>("check-circuit.json");

    public static SequenceShootRequest Sequence() => Read<SequenceShootRequest>("sequence-shoot.json");

    public static ReplanShootRequest Replan() => Read<ReplanShootRequest>("replan-shoot.json");

    private static T Read<T>(string file)
        where T : Google.Protobuf.IMessage, new() => Calls.Parse<T>(File.ReadAllText(RepositoryRoot.At("docs", "examples", file)));
}

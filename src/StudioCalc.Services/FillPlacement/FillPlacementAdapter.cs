using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>FillPlacementService</c>.</summary>
public sealed partial class FillPlacementAdapter : FillPlacementService.FillPlacementServiceBase;

using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>FreshnessService</c>.</summary>
public sealed partial class FreshnessAdapter : FreshnessService.FreshnessServiceBase;

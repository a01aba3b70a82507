using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>ShootPlanService</c>.</summary>
public sealed partial class ShootPlanAdapter : ShootPlanService.ShootPlanServiceBase;

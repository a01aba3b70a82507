using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>PlateViewService</c>.</summary>
public sealed partial class PlateViewAdapter : PlateViewService.PlateViewServiceBase;

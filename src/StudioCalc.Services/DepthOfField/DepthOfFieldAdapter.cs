using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>DepthOfFieldService</c>.</summary>
public sealed partial class DepthOfFieldAdapter : DepthOfFieldService.DepthOfFieldServiceBase
{
    internal const double DefaultWavelengthUm = 0.55;
}

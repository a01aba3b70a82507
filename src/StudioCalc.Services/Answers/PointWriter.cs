using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes places of the set.</summary>
internal static class PointWriter
{
    public static PointAnswer ToAnswer(this Vector place) => new() { XMm = place.X, YMm = place.Y, ZMm = place.Z };
}

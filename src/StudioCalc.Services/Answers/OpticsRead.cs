using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>A lens at its focus, with the sensor behind it where one is given.</summary>
internal sealed record OpticsRead(LensFocus Lens, SensorRead? Sensor);

/// <summary>A sensor as it is held.</summary>
internal sealed record SensorRead(double WidthMm, double HeightMm, double? LongSidePixels)
{
    public double LongSideMm => Math.Max(WidthMm, HeightMm);
}

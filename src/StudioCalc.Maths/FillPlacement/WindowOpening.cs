namespace StudioCalc.Maths;

/// <summary>The glass of an upright window.</summary>
/// <param name="WidthMm">Its width. [mm]</param>
/// <param name="HeightMm">Its height. [mm]</param>
/// <param name="SillOverTableMm">Its lower edge over the table; negative is below. [mm]</param>
public readonly record struct WindowOpening(double WidthMm, double HeightMm, double SillOverTableMm)
{
    /// <summary>Its lower edge over a place. [mm]</summary>
    /// <param name="heightMm">Height of the place over the table. [mm]</param>
    public double SillOverMm(double heightMm) => SillOverTableMm - heightMm;

    /// <summary>Its upper edge over a place. [mm]</summary>
    /// <param name="heightMm">Height of the place over the table. [mm]</param>
    public double HeadOverMm(double heightMm) => SillOverTableMm + HeightMm - heightMm;
}

/// <summary>A receiver before a window: x to the right seen facing it, y towards it, z up.</summary>
/// <param name="DistanceMm">Distance to the plane of the glass, above 0. [mm]</param>
/// <param name="RightMm">To the right of the window's middle. [mm]</param>
/// <param name="HeightMm">Height over the table. [mm]</param>
/// <param name="Normal">The unit direction that it faces.</param>
/// <param name="Collector">What it collects.</param>
public readonly record struct WindowPoint(
    double DistanceMm, double RightMm, double HeightMm, Vector Normal, Collector Collector = Collector.Flat);

namespace StudioCalc.Maths;

/// <summary>Where the power of a flash head stands and how far it goes.</summary>
/// <param name="PowerBelowFullStops">Present power below full. [stops]</param>
/// <param name="LowestPowerBelowFullStops">Lowest power below full. [stops]</param>
/// <param name="PowerScale">The steps of its power.</param>
public readonly record struct FlashHead(double PowerBelowFullStops, double LowestPowerBelowFullStops, StopScale PowerScale);

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The apertures of a lens: from its widest to its smallest, with the marks between.</summary>
/// <param name="WidestFNumber">F-number of the widest aperture.</param>
/// <param name="SmallestFNumber">F-number of the smallest aperture, not below the widest.</param>
/// <param name="Scale">The steps of the aperture ring.</param>
public sealed record ApertureRange(double WidestFNumber, double SmallestFNumber, StopScale Scale)
{
    private const double Rounding = 1e-9;

    /// <summary>What can be set for certain, the widest first: the marks within the range, and its ends.</summary>
    public IReadOnlyList<double> Settable() =>
    [
        .. Marks.Aperture.All(Scale).Select(mark => mark.Value).Where(value => value > WidestFNumber && value < SmallestFNumber)
            .Append(WidestFNumber).Append(SmallestFNumber).Order().Distinct(),
    ];

    /// <summary>Whether an aperture lies within the range.</summary>
    /// <param name="fNumber">Set f-number.</param>
    public bool Holds(double fNumber) =>
        fNumber >= WidestFNumber * (1 - Rounding) && fNumber <= SmallestFNumber * (1 + Rounding);

    /// <summary>Whether an aperture is a mark.</summary>
    /// <param name="fNumber">Set f-number, above 0.</param>
    public bool IsMark(double fNumber) =>
        Marks.Aperture.Nearest(fNumber, Scale) is { } mark && Abs(Marks.Aperture.RestStops(fNumber, mark)) <= Rounding;
}

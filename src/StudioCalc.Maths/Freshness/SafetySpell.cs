using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A stretch of time in which the temperature runs straight.</summary>
/// <param name="DurationS">How long. [s]</param>
/// <param name="StartCelsius">At its start. [°C]</param>
/// <param name="EndCelsius">At its end. [°C]</param>
public readonly record struct SafetySpell(double DurationS, double StartCelsius, double EndCelsius)
{
    /// <summary>The part of the spell that lies strictly between two temperatures, as times from its start; null if none does. [s]</summary>
    /// <remarks>Exact for a straight run: it is between them for one stretch at most.</remarks>
    public (double FromS, double ToS)? Between(double aboveCelsius, double belowCelsius)
    {
        var change = EndCelsius - StartCelsius;
        if (change == 0 || DurationS == 0)
        {
            return DurationS > 0 && StartCelsius > aboveCelsius && StartCelsius < belowCelsius ? (0, DurationS) : null;
        }

        var (first, last) = change > 0 ? (aboveCelsius, belowCelsius) : (belowCelsius, aboveCelsius);
        var from = Max(0, (first - StartCelsius) / change);
        var to = Min(1, (last - StartCelsius) / change);
        return from < to ? (from * DurationS, to * DurationS) : null;
    }
}

using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>What an estimate rests on, the weakest first.</summary>
public enum Basis
{
    /// <summary>Nothing but a general assumption.</summary>
    Assumption,

    /// <summary>Earlier days of the same studio.</summary>
    StudioHistory,

    /// <summary>Times taken of this very work.</summary>
    Measured,
}

/// <summary>A time with what it rests on.</summary>
/// <param name="Time">The time. [s]</param>
/// <param name="Basis">What it rests on.</param>
public readonly record struct TimeEstimate(ThreePoint Time, Basis Basis);

/// <summary>A number with what it rests on.</summary>
/// <param name="Value">The number.</param>
/// <param name="Basis">What it rests on.</param>
public readonly record struct NumberEstimate(double Value, Basis Basis);

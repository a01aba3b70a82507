using System.Runtime.CompilerServices;

namespace StudioCalc.Maths;

/// <summary>The mathematical conditions of a formula. Service limits stand in the contract, not here.</summary>
internal static class Guard
{
    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, "Must be a finite number.");

    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) && value > 0
            ? value
            : throw new ArgumentOutOfRangeException(name, "Must be a finite number above zero.");

    public static double NotNegative(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) && value >= 0
            ? value
            : throw new ArgumentOutOfRangeException(name, "Must be a finite number, not below zero.");
}

using System.Runtime.CompilerServices;

namespace StudioCalc.Maths;

/// <summary>Follows a calculation step by step, so that a person can redo the sum on paper.</summary>
/// <remarks>A formula hands its own text to the trail: <c>var l = trail.Let("L", K * B / S, "cd/m²", "(4)")</c>.
/// The symbol is the name that later expressions use. With <see cref="NoTrail"/> every member vanishes when compiled.</remarks>
public interface ITrail
{
    /// <summary>Names the part of the calculation that follows.</summary>
    void Section(string name);

    /// <summary>Notes a value that is given, chosen or looked up, and returns it.</summary>
    double Given(string symbol, double value, string unit, string source, string answerField = "");

    /// <summary>Notes a value with the expression that made it, and returns it.</summary>
    double Let(
        string symbol,
        double value,
        string unit,
        string source,
        string answerField = "",
        [CallerArgumentExpression(nameof(value))] string expression = "");
}

using System.Runtime.CompilerServices;

namespace StudioCalc.Maths;

/// <summary>One line of a sum.</summary>
/// <param name="Section">The part of the calculation.</param>
/// <param name="Symbol">The symbol that gets a value.</param>
/// <param name="Expression">The expression in earlier symbols; empty for a value given, chosen or looked up.</param>
/// <param name="Value">The value, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit; empty for a plain number.</param>
/// <param name="Source">Where the value or the formula comes from.</param>
/// <param name="AnswerField">The answer field that equals the value; empty if none does.</param>
public sealed record TrailStep(
    string Section, string Symbol, string Expression, double Value, string Unit, string Source, string AnswerField);

/// <summary>The trail that keeps every step. Made by <see cref="Start"/>; the default value throws.</summary>
public struct StepTrail : ITrail
{
    private List<TrailStep> _steps;
    private string _section;

    /// <summary>The steps so far, in order.</summary>
    public readonly IReadOnlyList<TrailStep> Steps => _steps;

    /// <summary>Starts an empty trail.</summary>
    public static StepTrail Start() => new() { _steps = [], _section = "" };

    /// <inheritdoc/>
    public void Section(string name) => _section = name;

    /// <inheritdoc/>
    public readonly double Given(string symbol, double value, string unit, string source, string answerField = "")
    {
        _steps.Add(new(_section, symbol, "", value, unit, source, answerField));
        return value;
    }

    /// <inheritdoc/>
    public readonly double Let(
        string symbol,
        double value,
        string unit,
        string source,
        string answerField = "",
        [CallerArgumentExpression(nameof(value))] string expression = "")
    {
        _steps.Add(new(_section, symbol, expression, value, unit, source, answerField));
        return value;
    }
}

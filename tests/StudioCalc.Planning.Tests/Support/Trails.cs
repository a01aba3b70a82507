using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

/// <summary>A trail can be redone: an independent evaluator reads each expression with the symbols before it.</summary>
internal static class Trails
{
    public static void Redo(IReadOnlyList<TrailStep> steps)
    {
        Assert.NotEmpty(steps);
        var symbols = new Dictionary<string, object>(StringComparer.Ordinal);
        foreach (var step in steps)
        {
            Assert.NotEmpty(step.Source);
            Assert.NotEmpty(step.Section);
            if (step.Expression.Length > 0)
            {
                var expression = new NCalc.Expression(step.Expression);
                foreach (var (symbol, value) in symbols)
                {
                    expression.Parameters[symbol] = value;
                }

                expression.Functions["Log"] = x => Math.Log(Number(x.Evaluate(0)));
                var found = Number(expression.Evaluate());
                Assert.Equal(step.Value, found, 1e-9 * Math.Max(1, Math.Abs(step.Value)));
            }

            symbols[step.Symbol] = step.Value;
        }
    }

    private static double Number(object? value) => Convert.ToDouble(value, System.Globalization.CultureInfo.InvariantCulture);
}

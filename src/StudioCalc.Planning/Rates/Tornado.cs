namespace StudioCalc.Planning;

/// <summary>What one input does to a result when it alone moves from its low to its high value.</summary>
/// <param name="Input">Index of the input.</param>
/// <param name="AtLow">Result at its low value.</param>
/// <param name="AtHigh">Result at its high value.</param>
public sealed record Swing(int Input, double AtLow, double AtHigh)
{
    /// <summary>Size of the swing.</summary>
    public double Size => Math.Abs(AtHigh - AtLow);
}

/// <summary>Inputs by what they do to a result, one at a time.</summary>
/// <remarks>Inputs that act together are missed: moving one at a time shows no interaction.</remarks>
public static class Tornado
{
    /// <summary>Swings, the largest first; equal ones in the order of the inputs.</summary>
    /// <param name="inputs">Base, low and high value of each input.</param>
    /// <param name="model">The result of a set of values.</param>
    public static IReadOnlyList<Swing> Of(IReadOnlyList<(double Base, double Low, double High)> inputs, Func<IReadOnlyList<double>, double> model)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(model);
        double At(int moved, double value) => model([.. inputs.Select((input, i) => i == moved ? value : input.Base)]);
        return
        [
            .. inputs
                .Select((input, i) => new Swing(i, At(i, input.Low), At(i, input.High)))
                .OrderByDescending(swing => swing.Size)
                .ThenBy(swing => swing.Input),
        ];
    }
}

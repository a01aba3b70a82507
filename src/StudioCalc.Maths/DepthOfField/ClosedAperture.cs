namespace StudioCalc.Maths;

/// <summary>Searches the aperture marks beyond a given one.</summary>
internal static class ClosedAperture
{
    private const double Rounding = 1e-9;

    /// <summary>The widest mark beyond an aperture at which something holds, with the Airy disc (13) within the permitted blur; null
    /// when there is none. What holds at a mark must hold at every smaller one.</summary>
    public static double? Widest(
        LensFocus lens, double fNumber, double permittedBlurMm, StopScale scale, double wavelengthUm, Func<double, bool> holds)
    {
        var none = default(NoTrail);
        var marks = Marks.Aperture.All(scale).Select(mark => mark.Value)
            .SkipWhile(value => value <= fNumber * (1 + Rounding))
            .TakeWhile(value => Diffraction.AiryDiscUm(value * lens.EffectiveFactor, wavelengthUm, ref none) <= permittedBlurMm * 1000)
            .ToList();
        return First(marks, holds);
    }

    /// <summary>The first of some apertures at which something holds; null when there is none. What holds at one must hold at every
    /// later one.</summary>
    public static double? First(IReadOnlyList<double> marks, Func<double, bool> holds)
    {
        if (marks.Count == 0 || !holds(marks[^1]))
        {
            return null;
        }

        var (low, high) = (-1, marks.Count - 1);
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            (low, high) = holds(marks[middle]) ? (low, middle) : (middle, high);
        }

        return marks[high];
    }
}

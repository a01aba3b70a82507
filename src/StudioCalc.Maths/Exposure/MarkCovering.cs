using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Marks that change a setting by at least so much.</summary>
internal static class MarkCovering
{
    private const double Rounding = 1e-9;

    /// <summary>The nearest mark that renders the picture at least <paramref name="stops"/> brighter (positive) or darker than
    /// <paramref name="value"/>; the exact value beyond the marks.</summary>
    /// <param name="marks">The marks of the setting.</param>
    /// <param name="value">Its present value.</param>
    /// <param name="stops">The change of exposure.</param>
    /// <param name="factorPerStop">What one stop more exposure multiplies the value by.</param>
    /// <param name="scale">The scale of the marks.</param>
    public static double Covering(this MarkSeries marks, double value, double stops, double factorPerStop, StopScale scale)
    {
        var exact = value * Pow(factorPerStop, stops);
        if (marks.Nearest(exact, scale) is not { } mark)
        {
            return exact;
        }

        var over = Log2(mark.Value / value) / Log2(factorPerStop);
        if ((over - stops) * Sign(stops) >= -Rounding)
        {
            return mark.Value;
        }

        var step = Pow(factorPerStop, (double)Sign(stops) / mark.Scale.StepsPerStop());
        return marks.Nearest(mark.Value * step, scale)?.Value ?? exact;
    }
}

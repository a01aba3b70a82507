using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Finds where a function changes its sign, by false position (Illinois) with halving where that is slow.</summary>
internal static class Root
{
    /// <summary>The place to about the last digit; the function must change its sign between the ends.</summary>
    public static double Find(Func<double, double> function, double low, double high)
    {
        var (atLow, atHigh) = (function(low), function(high));
        for (var i = 0; i < 200 && high - low > 4e-16 * Max(Abs(low), Abs(high)); i++)
        {
            var between = i % 4 == 3 ? low + (high - low) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
            if (!(between > low && between < high))
            {
                between = low + (high - low) / 2;
            }

            var at = function(between);
            if (at == 0)
            {
                return between;
            }

            if (at < 0 == atLow < 0)
            {
                (low, atLow, atHigh) = (between, at, atHigh / 2);
            }
            else
            {
                (high, atHigh, atLow) = (between, at, atLow / 2);
            }
        }

        return low + (high - low) / 2;
    }
}

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Heat damage of leaves on hot food.</summary>
/// <remarks>
/// <code>
/// t(T) = 300 10^(-(T - 53) / 4.1636)                                 (33)
/// sum of dt / t(T) = 1 when they are harmed                          (34)
/// </code>
/// <para>T: temperature of the food's surface under them in °C. t: time in s. Range: 46 to 53 °C, from pepper leaf discs; above it is
/// extended, below 46 nothing is told. Source: Anderson, McCollum and Roberts, HortScience, by its abstract: the harmful temperature falls
/// from 53 to 46 °C as exposure grows from 5 to 240 minutes. Culinary herbs were not measured.</para>
/// </remarks>
public static class LeafDamage
{
    /// <summary>Below this temperature the law tells nothing. [°C]</summary>
    public const double LeastCelsius = 46;

    private const double Reference = 53;
    private const double ReferenceS = 300;
    private static readonly double Decade = (53 - LeastCelsius) / Log10(240.0 / 5);

    /// <summary>How long leaves stand a temperature. (33) [s]</summary>
    /// <param name="celsius">Temperature under them. [°C]</param>
    public static double TimeS(double celsius) => ReferenceS * Pow(10, -(celsius - Reference) / Decade);

    /// <summary>When leaves are harmed on food that cools; null if they are not. (34) [s]</summary>
    /// <param name="course">The food, from its start.</param>
    /// <param name="warmer">How much warmer than it the leaves are taken to be. [K]</param>
    public static double? Until(FoodCourse course, double warmer)
    {
        ArgumentNullException.ThrowIfNull(course);
        const double step = 0.5;
        var damage = 0.0;
        for (var seconds = 0.0; seconds < HoldingTime.LongestS; seconds += step)
        {
            var celsius = course.At(seconds).Surface + warmer;
            if (celsius < LeastCelsius)
            {
                return null;
            }

            var more = step / TimeS(celsius);
            if (damage + more >= 1)
            {
                return seconds + step * (1 - damage) / more;
            }

            damage += more;
        }

        return null;
    }
}

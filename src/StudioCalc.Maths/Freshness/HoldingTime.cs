using static System.Math;

namespace StudioCalc.Maths;

/// <summary>When the surface of food passes a temperature.</summary>
public static class HoldingTime
{
    /// <summary>The longest time that is looked at. [s]</summary>
    public const double LongestS = 86400;

    /// <summary>When the surface first passes a temperature; 0 where it has passed it at the start, null if it does not. [s]</summary>
    /// <param name="course">The food, from its start.</param>
    /// <param name="celsius">The temperature. [°C]</param>
    /// <param name="isFalling">Whether it passes it from above.</param>
    /// <param name="longestS">How long to look. [s]</param>
    public static double? Until(FoodCourse course, double celsius, bool isFalling, double longestS = LongestS)
    {
        ArgumentNullException.ThrowIfNull(course);
        var before = course.At(0);
        if (HasPassed(before))
        {
            return 0;
        }

        while (before.Seconds < longestS)
        {
            var now = course.At(Min(longestS, before.Seconds + StepAfter(before.Seconds)));
            if (HasPassed(now))
            {
                return before.Seconds + (now.Seconds - before.Seconds) * (celsius - before.Surface) / (now.Surface - before.Surface);
            }

            if (IsSettled(before, now))
            {
                return null;
            }

            before = now;
        }

        return null;

        static bool IsSettled(FoodState before, FoodState now) =>
            now.Seconds > 3600 && Abs(now.Surface - before.Surface) < 1e-7 && Abs(now.Mean - before.Mean) < 1e-7;

        bool HasPassed(FoodState state) => isFalling ? state.Surface <= celsius : state.Surface >= celsius;
    }

    // Straight lines between moments are right to a hundredth of a second: early on the surface bends, later it does not.
    private static double StepAfter(double seconds) => seconds switch { < 5 => 0.1, < 600 => 1, < 7200 => 5, _ => 30 };
}

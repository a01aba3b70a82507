using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A temperature that the surface of food may pass.</summary>
/// <param name="Celsius">The temperature. [°C]</param>
/// <param name="IsFalling">Whether it is passed from above.</param>
public readonly record struct SetPointMark(double Celsius, bool IsFalling);

/// <summary>When the surface of food passes temperatures.</summary>
public static class HoldingTime
{
    /// <summary>The longest time that is looked at. [s]</summary>
    public const double LongestS = 86400;

    // A hundredth of a kelvin a day: nothing more happens.
    private const double SettledPerS = 1e-7;

    /// <summary>When the surface first passes each temperature; 0 where it has passed it at the start, null if it does not. [s]</summary>
    /// <param name="course">The food, from its start.</param>
    /// <param name="marks">The temperatures.</param>
    /// <param name="longestS">How long to look. [s]</param>
    public static double?[] Until(FoodCourse course, IReadOnlyList<SetPointMark> marks, double longestS = LongestS)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(marks);
        var before = course.At(0);
        var passed = marks.Select(mark => HasPassed(before, mark) ? 0 : (double?)null).ToArray();
        while (before.Seconds < longestS && Array.Exists(passed, at => at is null))
        {
            var now = course.At(Min(longestS, before.Seconds + StepAfter(before.Seconds)));
            for (var i = 0; i < passed.Length; i++)
            {
                if (passed[i] is null && HasPassed(now, marks[i]))
                {
                    passed[i] = before.Seconds
                        + (now.Seconds - before.Seconds) * (marks[i].Celsius - before.Surface) / (now.Surface - before.Surface);
                }
            }

            if (IsSettled(before, now))
            {
                break;
            }

            before = now;
        }

        return passed;
    }

    private static bool HasPassed(FoodState state, SetPointMark mark) =>
        mark.IsFalling ? state.Surface <= mark.Celsius : state.Surface >= mark.Celsius;

    private static bool IsSettled(FoodState before, FoodState now)
    {
        var most = SettledPerS * (now.Seconds - before.Seconds);
        return Abs(now.Surface - before.Surface) < most && Abs(now.Core - before.Core) < most && Abs(now.Mean - before.Mean) < most
            && Abs((now.Plate ?? 0) - (before.Plate ?? 0)) < most;
    }

    // Straight lines between moments are right to a hundredth of a second: early on the surface bends, later it does not.
    private static double StepAfter(double seconds) => seconds switch { < 5 => 0.1, < 600 => 1, < 7200 => 5, _ => 30 };
}

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A component's times when every step and window takes its likely time.</summary>
/// <param name="ClockStartS">When its clock starts. [s]</param>
/// <param name="ClockRestartS">When its last refresh starts it anew; null without one. [s]</param>
/// <param name="NeededUntilS">When it is last needed. [s]</param>
/// <param name="LatestStartS">The latest that its clock may start. [s]</param>
/// <param name="EarliestStartS">The earliest; null where nothing bounds it. [s]</param>
/// <param name="SlackS">What is left of its window; null where its look does not end. [s]</param>
/// <param name="Holds">Whether it has settled when it is needed, and holds until it is last needed.</param>
public sealed record ComponentTimes(
    double ClockStartS, double? ClockRestartS, double NeededUntilS, double LatestStartS, double? EarliestStartS, double? SlackS, bool Holds);

/// <summary>A budget in which every step and window takes its likely time.</summary>
/// <remarks>
/// <code>
/// B0 = 0      Bk = B(k-1) + tk      moments of the steps          (50)
/// latest = F - d                                                  (51)
/// earliest = E1 - w                                               (52)
/// slack = the least of s + w - E over the runs of the clock       (53)
/// </code>
/// <para>t: time of a step. F: moment from which the component is needed. d: time to settle. w: window. s, E: start of a run of the
/// clock and the moment up to which the look is needed in it; E1: that of the first run. A component holds where no slack is below 0
/// and its clock starts by the latest. All in s. Source: definitions.</para>
/// </remarks>
public sealed record LikelyBudget
{
    // Rounding error of sums of steps.
    internal const double RoundingS = 1e-9;

    /// <summary>The moments of the steps: one more than there are steps. [s]</summary>
    public required IReadOnlyList<double> MomentsS { get; init; }

    /// <summary>The components, in their order.</summary>
    public required IReadOnlyList<ComponentTimes> Components { get; init; }

    /// <summary>Whether every component holds.</summary>
    public bool AllHold => Components.All(component => component.Holds);

    /// <summary>Index of the component with the least slack, the first of several; null where no look ends.</summary>
    public int? Tightest => Components
        .Select((component, index) => (component.SlackS, Index: index))
        .Where(component => component.SlackS is not null)
        .OrderBy(component => component.SlackS)
        .Select(component => (int?)component.Index)
        .FirstOrDefault();

    /// <summary>Sums up a budget.</summary>
    /// <param name="steps">The steps, in their order.</param>
    /// <param name="components">The components.</param>
    /// <param name="trail">Follows the sum.</param>
    public static LikelyBudget Evaluate<TTrail>(IReadOnlyList<ShotStep> steps, IReadOnlyList<TimedComponent> components, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(components);
        trail.Section("steps");
        var moments = new double[steps.Count + 1];
        var B = trail.Given("B", 0, "s", "start of the first step");
        for (var i = 0; i < steps.Count; i++)
        {
            var t = trail.Given("t", Guard.NotNegative(steps[i].Time.Likely), "s", $"steps[{i}].likely");
            B = trail.Let("B", B + t, "s", "freshness (50)");
            moments[i + 1] = B;
        }

        var times = new ComponentTimes[components.Count];
        for (var i = 0; i < times.Length; i++)
        {
            trail.Section($"component {i + 1}");
            times[i] = Times(components[i], moments, $"components[{i}].", ref trail);
        }

        return new() { MomentsS = moments, Components = times };
    }

    private static ComponentTimes Times<TTrail>(TimedComponent component, double[] moments, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var start = moments[component.ClockStart];
        double? earliest = null, left = null;
        if (component.Window is { } window)
        {
            var w = trail.Given("w", window.Likely, "s", $"{field}window.span.likely");
            var slack = double.NaN;
            foreach (var run in component.Runs())
            {
                var s = trail.Given("s", moments[run.Start], "s", "start of a run of its clock, a moment B");
                var E = trail.Given("E", moments[run.End], "s", "needed until then, a moment B");
                if (run.Start == component.ClockStart)
                {
                    earliest = trail.Let("earliest", E - w, "s", "freshness (52)", $"{field}earliest_start_s");
                }

                slack = double.IsNaN(slack)
                    ? trail.Let("slack", s + w - E, "s", "freshness (53), first run")
                    : trail.Let("slack", Min(slack, s + w - E), "s", "freshness (53)");
            }

            left = trail.Given("slack", slack, "s", "the least of all runs", $"{field}slack_s");
        }

        var F = trail.Given("F", moments[component.NeededFrom], "s", "needed from then, a moment B");
        var d = trail.Given("d", component.SettlingS, "s", "settling");
        var latest = trail.Let("latest", F - d, "s", "freshness (51)", $"{field}latest_start_s");
        return new(
            start,
            component.Refreshes.Count > 0 ? moments[component.Refreshes[^1] + 1] : null,
            moments[component.NeededUntil],
            latest,
            earliest,
            left,
            start <= latest + RoundingS && left is not < -RoundingS);
    }
}

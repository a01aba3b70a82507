namespace StudioCalc.Maths;

/// <summary>Chances of a budget by random draws.</summary>
/// <remarks>
/// <code>
/// P = k / n                                                       (56)
/// se = sqrt(p (1 - p) / n),   p = (k + 1) / (n + 2)               (57)
/// </code>
/// <para>k: draws in which what is asked holds, of n. A draw takes one time for every step and one window for every component, each by
/// its own address, and tests all components on the same steps: they share them, so their chances do not multiply. (57) keeps an error
/// above 0 where all draws hold, or none. Cutting a step is tested on the same draws, with its time gone and with it what it refreshes.
/// A component holds in a draw where it has settled when it is needed and its window covers every run of its clock.</para>
/// <para>Windows are drawn each for itself; where one cause moves several, the chance that all hold is a little off. Source: definitions;
/// (57) is Laplace's rule of succession in the binomial error.</para>
/// </remarks>
public sealed record BudgetChances
{
    // Windows of components stand far from the steps in the addresses of the draws.
    private const uint Windows = 0x10000;

    private const int DrawsBetweenLooks = 256;

    /// <summary>The number of draws n.</summary>
    public required int Draws { get; init; }

    /// <summary>Draws in which every component holds.</summary>
    public required int AllHeld { get; init; }

    /// <summary>Draws in which each component holds, in their order.</summary>
    public required IReadOnlyList<int> Held { get; init; }

    /// <summary>Draws in which every component holds when a step is cut: of each step that may be.</summary>
    public required IReadOnlyList<(int Step, int AllHeld)> Cuts { get; init; }

    /// <summary>When each step ends at the latest in nine of ten draws. [s]</summary>
    public required IReadOnlyList<double> EndsP90S { get; init; }

    /// <summary>The chance that something holds. (56)</summary>
    public double Chance(int held) => (double)held / Draws;

    /// <summary>The standard error of that chance. (57)</summary>
    public double Error(int held)
    {
        var p = (held + 1.0) / (Draws + 2);
        return Math.Sqrt(p * (1 - p) / Draws);
    }

    /// <summary>Draws a budget.</summary>
    /// <param name="steps">The steps, in their order.</param>
    /// <param name="components">The components.</param>
    /// <param name="draws">The number of draws, above 0.</param>
    /// <param name="seed">The seed: the same one gives the same draws.</param>
    /// <param name="cancellation">Stops the draws.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static BudgetChances Draw(
        IReadOnlyList<ShotStep> steps, IReadOnlyList<TimedComponent> components, int draws, uint seed, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(components);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(draws);
        var plan = Tests(components, null);
        var cuts = Enumerable.Range(0, steps.Count).Where(i => steps[i].MayBeCut).Select(i => (Step: i, Tests: Tests(components, i))).ToArray();
        var (all, held, heldWithout) = (0, new int[components.Count], new int[cuts.Length]);
        var ends = steps.Select(_ => new double[draws]).ToArray();
        var moments = new double[steps.Count + 1];
        var windows = new double[components.Count];
        for (var draw = 0; draw < draws; draw++)
        {
            if (draw % DrawsBetweenLooks == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            for (var i = 0; i < steps.Count; i++)
            {
                moments[i + 1] = moments[i] + steps[i].Time.Draw((seed, 0), (uint)draw, (uint)i);
                ends[i][draw] = moments[i + 1];
            }

            for (var i = 0; i < windows.Length; i++)
            {
                windows[i] = components[i].Window is { } window ? window.Draw((seed, 0), (uint)draw, Windows + (uint)i) : double.PositiveInfinity;
            }

            var hold = true;
            for (var i = 0; i < held.Length; i++)
            {
                var holds = plan[i].Holds(moments, windows[i], null);
                held[i] += holds ? 1 : 0;
                hold &= holds;
            }

            all += hold ? 1 : 0;
            for (var c = 0; c < cuts.Length; c++)
            {
                heldWithout[c] += Hold(cuts[c].Tests, moments, windows, cuts[c].Step) ? 1 : 0;
            }
        }

        return new()
        {
            Draws = draws,
            AllHeld = all,
            Held = held,
            Cuts = [.. cuts.Select((cut, c) => (cut.Step, heldWithout[c]))],
            EndsP90S = [.. ends.Select(NinetiethPercentile)],
        };
    }

    private static Test[] Tests(IReadOnlyList<TimedComponent> components, int? cut) =>
        [.. components.Select(component => new Test(
            [.. component.Runs(cut)], new(component.ClockStart, component.NeededFrom), component.SettlingS - LikelyBudget.RoundingS))];

    private static bool Hold(Test[] tests, double[] moments, double[] windows, int cut)
    {
        for (var i = 0; i < tests.Length; i++)
        {
            if (!tests[i].Holds(moments, windows[i], cut))
            {
                return false;
            }
        }

        return true;
    }

    private static double NinetiethPercentile(double[] values)
    {
        Array.Sort(values);
        return values[(9 * values.Length + 9) / 10 - 1];
    }

    private sealed record Test(ClockRun[] Runs, ClockRun Settling, double SettlingS)
    {
        public bool Holds(double[] moments, double window, int? cut)
        {
            foreach (var run in Runs)
            {
                if (Span(run, moments, cut) > window + LikelyBudget.RoundingS)
                {
                    return false;
                }
            }

            return SettlingS <= 0 || Span(Settling, moments, cut) >= SettlingS;
        }

        private static double Span(ClockRun run, double[] moments, int? cut) => cut is { } step && step >= run.Start && step < run.End
            ? moments[step] - moments[run.Start] + (moments[run.End] - moments[step + 1])
            : moments[run.End] - moments[run.Start];
    }
}

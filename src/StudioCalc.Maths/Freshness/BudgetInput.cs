namespace StudioCalc.Maths;

/// <summary>A step of a shot.</summary>
/// <param name="Time">How long it takes.</param>
/// <param name="MayBeCut">Whether it may be cut when the time is short.</param>
public sealed record ShotStep(ThreePoint Time, bool MayBeCut);

/// <summary>A run of a clock that the window of a component must cover, from one moment of the steps to another.</summary>
/// <param name="Start">The moment at which the clock starts.</param>
/// <param name="End">The moment up to which the look is needed.</param>
public readonly record struct ClockRun(int Start, int End);

/// <summary>A component of a dish with its clock.</summary>
/// <remarks>Moments are counted: moment k is the end of the first k steps and the start of the next, 0 the start of the first.</remarks>
public sealed record TimedComponent
{
    /// <summary>How long its look lasts; null where it does not end.</summary>
    public required ThreePoint? Window { get; init; }

    /// <summary>The moment at which its clock starts.</summary>
    public required int ClockStart { get; init; }

    /// <summary>The moment from which it is needed, not before its clock starts.</summary>
    public required int NeededFrom { get; init; }

    /// <summary>The moment up to which it is needed, not before <see cref="NeededFrom"/>.</summary>
    public required int NeededUntil { get; init; }

    /// <summary>Time to settle before it looks right, from the first start of its clock. [s]</summary>
    public double SettlingS { get; init; }

    /// <summary>Indices of the steps that refresh it, in order; each lies between its clock's start and its last need.</summary>
    public IReadOnlyList<int> Refreshes { get; init; } = [];

    /// <summary>The runs of its clock in which it is needed.</summary>
    /// <param name="cut">A step that is cut, with what it refreshes; null for none.</param>
    /// <remarks>A refresh ends a run when its step starts, and starts the next when its step ends.</remarks>
    public IEnumerable<ClockRun> Runs(int? cut = null)
    {
        var start = ClockStart;
        foreach (var step in Refreshes.Where(step => step != cut))
        {
            if (step > NeededFrom)
            {
                yield return new(start, step);
            }

            start = step + 1;
        }

        yield return new(start, NeededUntil);
    }
}

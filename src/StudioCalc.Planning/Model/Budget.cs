namespace StudioCalc.Planning;

/// <summary>A moment of a stage or a shot: so long after its start or its end, or before where the offset is negative.</summary>
/// <param name="Index">Which stage of the plate or shot of the block, from 0.</param>
/// <param name="FromEnd">Whether the offset counts from the end; the end of a shot is that of its last frame.</param>
/// <param name="OffsetMs">The offset. [ms]</param>
public readonly record struct Moment(int Index, bool FromEnd, long OffsetMs)
{
    /// <summary>The end of a stage or shot.</summary>
    public static Moment End(int index) => new(index, true, 0);

    /// <summary>A moment after the start of a stage or shot.</summary>
    public static Moment AfterStart(int index, long offsetMs = 0) => new(index, false, offsetMs);
}

/// <summary>How long one component of a plate lasts: from an event in the making of the plate to the last frame that needs it.</summary>
/// <param name="Component">The component's name.</param>
/// <param name="Event">When its clock starts: a moment of a stage of its plate (leaves the pass, plated hot, garnish added, landed).</param>
/// <param name="LastFrame">The last frame that needs it: a moment of a shot of its block.</param>
/// <param name="LimitMs">The longest time from the one to the other. [ms]</param>
public sealed record Budget(string Component, Moment Event, Moment LastFrame, long LimitMs);

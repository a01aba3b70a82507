namespace StudioCalc.Planning;

/// <summary>A stretch of time in which a resource works or frames may be taken; whatever is done lies inside one of them.</summary>
/// <param name="FromMs">Its start, from the start of the day. [ms]</param>
/// <param name="UntilMs">Its end, after its start. [ms]</param>
public readonly record struct OpenTime(long FromMs, long UntilMs);

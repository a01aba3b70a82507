namespace StudioCalc.Planning;

/// <summary>A stage or shot that has begun.</summary>
/// <param name="Operation">Which.</param>
/// <param name="StartMs">When it began. [ms]</param>
/// <param name="EndMs">When it ended, or is expected to end. [ms]</param>
public readonly record struct Begun(Operation Operation, long StartMs, long EndMs);

/// <summary>What has happened by now. What has begun stays as it is; all else starts now or later.</summary>
/// <remarks>A plate that was lost has no stage that has begun, so it is made again. Stages before one that has begun, and what a shot needs,
/// need not be told. The last setup or shot that has begun stands on the set.</remarks>
/// <param name="NowMs">Now. [ms]</param>
/// <param name="Begun">What has begun.</param>
/// <param name="Order">The order so far, as indices of blocks: kept where no other is better.</param>
public sealed record Progress(long NowMs, IReadOnlyList<Begun> Begun, IReadOnlyList<int> Order);

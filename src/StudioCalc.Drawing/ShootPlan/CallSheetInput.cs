using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>What a call sheet shows.</summary>
/// <param name="Request">What was asked.</param>
/// <param name="Plan">The plan that came of it.</param>
/// <param name="Floor">The floor sketch; null without one.</param>
/// <param name="Local">The local time so long after the start of the day, with its offset.</param>
public sealed record CallSheetInput(RenderCallSheetRequest Request, PlanShootResponse Plan, Picture? Floor, Func<Duration, DateTimeOffset> Local);

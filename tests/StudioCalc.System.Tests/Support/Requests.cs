using Google.Rpc;
using StudioCalc.V1;

namespace StudioCalc.System.Tests;

/// <summary>What several peers send.</summary>
internal static class Requests
{
    public static EvaluateExposureRequest WithBadFields => new()
    {
        Settings = new() { Aperture = new() { FNumber = 1000 }, ShutterSpeed = new() { Mark = "1/125" } },
        Scale = (StopScale)9,
    };

    public static EvaluateExposureRequest TooLarge => new()
    {
        Settings = new() { Aperture = new() { Mark = new('5', 2 * 1024 * 1024) } },
    };

    /// <summary>Under a deadline that may or may not be met, there is either the whole answer or none.</summary>
    public static async Task AnswersWholeOrExceedsAsync(HostProcess host, Func<IEnumerable<Call>, Task<IReadOnlyList<Outcome>>> callAsync)
    {
        var sample = Sample.Of("BalanceFill");
        int[] deadlines = [1, 1, 2, 2, 3, 4, 6, 10, 20];
        var outcomes = await callAsync([.. deadlines.Select(ms => Call.Of(sample) with { DeadlineMs = ms }), Call.Of(sample) with { DeadlineMs = 600_000 }]);

        await outcomes[^1].IsAnswerToAsync(host, sample);
        await Assert.AllAsync(outcomes, async outcome =>
        {
            if (outcome.Answer is null)
            {
                // An answer that the deadline cuts short is a malformed one to some clients.
                Assert.Contains(outcome.Refusal!.Reason, [null, "DEADLINE_EXCEEDED"]);
                Assert.Contains((Code)outcome.Refusal.Code, [Code.DeadlineExceeded, Code.InvalidArgument]);
            }
            else
            {
                await outcome.IsAnswerToAsync(host, sample);
            }
        });
    }
}

using Google.Protobuf.WellKnownTypes;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Durations in a form that the standard does not allow. A general evaluator lets these pass, so they stand here.</summary>
public sealed class DurationCheckTests
{
    private readonly DurationCheck _check = new(FieldRules.Of(TimedReading.Descriptor.FindFieldByName("offset")));

    [Theory]
    [InlineData(0, 1_000_000_000)]
    [InlineData(0, 2_000_000_000)]
    [InlineData(5, -1)]
    [InlineData(86400, int.MinValue)]
    [InlineData(5, int.MaxValue)]
    public void Check_OfADurationThatIsNotNormal_RefusesIt(long seconds, int nanos)
    {
        var violations = new Violations();
        var duration = new Duration { Seconds = seconds, Nanos = nanos };

        Assert.False(_check.Check(duration, "offset", violations));
        Assert.Equal("OUT_OF_RANGE", Assert.Single(violations.List).Reason);
        Assert.False(_check.Check(duration, "offset", null));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 999_999_999)]
    [InlineData(5, 1)]
    public void Check_OfANormalDurationWithinTheBounds_LetsItPass(long seconds, int nanos) =>
        Assert.True(_check.Check(new() { Seconds = seconds, Nanos = nanos }, "offset", null));
}

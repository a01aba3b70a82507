using StudioCalc.Contracts;

namespace StudioCalc.Services.Tests;

/// <summary>Moments in a form that the standard does not allow.</summary>
public sealed class TimestampCheckTests
{
    private readonly TimestampCheck _check = new();

    [Theory]
    [InlineData(0, 1_000_000_000)]
    [InlineData(5, -1)]
    [InlineData(-62_135_596_801, 0)]
    [InlineData(253_402_300_800, 0)]
    public void Check_OfAMomentThatIsNone_RefusesIt(long seconds, int nanos)
    {
        var violations = new Violations();
        Assert.False(_check.Check(new() { Seconds = seconds, Nanos = nanos }, "time", violations));
        Assert.Equal("OUT_OF_RANGE", Assert.Single(violations.List).Reason);
        Assert.False(_check.Check(new() { Seconds = seconds, Nanos = nanos }, "time", null));
    }

    [Theory]
    [InlineData(-62_135_596_800, 0)]
    [InlineData(253_402_300_799, 999_999_999)]
    public void Check_OfAMoment_LetsItPass(long seconds, int nanos) =>
        Assert.True(_check.Check(new() { Seconds = seconds, Nanos = nanos }, "time", null));
}

using System.Text;
using Google.Protobuf;
using Google.Rpc;
using StudioCalc.V1;

namespace StudioCalc.Contracts.Tests;

public sealed class ContractJsonTests
{
    public static TheoryData<string, string, string> Refused => new()
    {
        { """{"guess":1}""", "guess", "UNKNOWN_FIELD" },
        { """{"settings":{"guess":1}}""", "settings.guess", "UNKNOWN_FIELD" },
        { """{"settings":{"a b\n":1}}""", "settings.(unprintable)", "UNKNOWN_FIELD" },
        { """{"settings":{"guess\n":1}}""", "settings.(unprintable)", "UNKNOWN_FIELD" },
        { """{"lensLossStops":1,"lensLossStops":1}""", "lens_loss_stops", "DOUBLED_FIELD" },
        { """{"lensLossStops":1,"lens_loss_stops":1}""", "lens_loss_stops", "DOUBLED_FIELD" },
        { """{"lensLossStops":"1,5"}""", "lens_loss_stops", "DECIMAL_COMMA" },
        { """{"lensLossStops":"1.5"}""", "lens_loss_stops", "WRONG_TYPE" },
        { """{"lensLossStops":"NaN"}""", "lens_loss_stops", "OUT_OF_RANGE" },
        { """{"lensLossStops":"Infinity"}""", "lens_loss_stops", "OUT_OF_RANGE" },
        { """{"lensLossStops":true}""", "lens_loss_stops", "WRONG_TYPE" },
        { """{"lensLossStops":[1]}""", "lens_loss_stops", "WRONG_TYPE" },
        { """{"lensLossStops":NaN}""", "", "MALFORMED_JSON" },
        { """{"lensLossStops":1,5}""", "", "MALFORMED_JSON" },
        { """{"lensLossStops":1,}""", "", "MALFORMED_JSON" },
        { """{"lensLossStops":01}""", "", "MALFORMED_JSON" },
        { "", "", "MALFORMED_JSON" },
        { "[]", "", "WRONG_TYPE" },
        { "null", "", "WRONG_TYPE" },
        { """{"settings":1}""", "settings", "WRONG_TYPE" },
        { """{"settings":{"aperture":{"fNumber":8,"mark":"8"}}}""", "settings.aperture.mark", "CONFLICT" },
        { """{"settings":{"aperture":{"mark":8}}}""", "settings.aperture.mark", "WRONG_TYPE" },
        { """{"settings":{"aperture":{"tenths":1.5}}}""", "settings.aperture.tenths", "WRONG_TYPE" },
        { """{"settings":{"aperture":{"tenths":-1}}}""", "settings.aperture.tenths", "WRONG_TYPE" },
        { """{"settings":{"aperture":{"tenths":4294967296}}}""", "settings.aperture.tenths", "WRONG_TYPE" },
        { """{"scale":"THIRD"}""", "scale", "UNKNOWN_VALUE" },
        { """{"scale":1.5}""", "scale", "UNKNOWN_VALUE" },
        { """{"scale":true}""", "scale", "UNKNOWN_VALUE" },
        { """{"includeWorking":1}""", "include_working", "WRONG_TYPE" },
        { """{"includeWorking":"true"}""", "include_working", "WRONG_TYPE" },
        { """{"settings":{"aperture":{"mark":"\ud800"}}}""", "", "MALFORMED_JSON" },
        { """{"\ud800":1}""", "", "MALFORMED_JSON" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Read_WhatDoesNotFit_IsRefusedByPath(string json, string field, string reason)
    {
        var (_, violations) = Read<EvaluateExposureRequest>(json);
        Assert.Equal([(field, reason)], violations);
    }

    [Fact]
    public void Read_TextThatIsNotUtf8_IsRefused()
    {
        var violations = new Violations();
        byte[] broken = [.. "{\"settings\":{\"aperture\":{\"mark\":\""u8, 0xFF, .. "\"}}}"u8];
        ContractJson.Read(new EvaluateExposureRequest(), broken, violations);
        Assert.Equal("MALFORMED_JSON", Assert.Single(violations.List).Reason);
    }

    [Fact]
    public void Read_TooDeep_IsRefused()
    {
        var json = string.Concat(Enumerable.Repeat("""{"settings":""", 40)) + "1" + new string('}', 40);
        Assert.Equal([("", "MALFORMED_JSON")], Read<EvaluateExposureRequest>(json).Violations);
    }

    [Fact]
    public void Read_SeveralBadFields_NamesThemAll() => Assert.Equal(
        [("scale", "UNKNOWN_VALUE"), ("guess", "UNKNOWN_FIELD"), ("lens_loss_stops", "DECIMAL_COMMA")],
        Read<EvaluateExposureRequest>("""{"scale":"X","guess":1,"lensLossStops":"1,5"}""").Violations);

    [Fact]
    public void Read_ListItems_AreNamedByIndex() => Assert.Equal(
        [("preference[1]", "UNKNOWN_VALUE"), ("fill.lowest_power", "WRONG_TYPE")],
        Read<BalanceFillRequest>("""{"preference":["BALANCE_VARIABLE_FLASH_POWER","X"],"fill":{"lowestPower":[]}}""").Violations);

    [Fact]
    public void Read_ListThatIsNone_IsRefused() =>
        Assert.Equal([("preference", "WRONG_TYPE")], Read<BalanceFillRequest>("""{"preference":1}""").Violations);

    [Fact]
    public void Read_ANumberBeyondDouble_IsLeftToTheChecks()
    {
        var (message, violations) = Read<EvaluateExposureRequest>("""{"lensLossStops":1e400}""");
        Assert.True(violations.Count > 0 || double.IsInfinity(message.LensLossStops));
    }

    [Fact]
    public void Read_ProtoNamesNumbersOfEnumsAndNull_AreTaken()
    {
        var (message, violations) = Read<EvaluateExposureRequest>(
            """{"lens_loss_stops":1.5,"scale":2,"settings":null,"settings":null,"include_working":true}"""
                .Replace("\"settings\":null,\"settings\":null", "\"settings\":null", StringComparison.Ordinal));
        Assert.Empty(violations);
        Assert.Equal(new() { LensLossStops = 1.5, Scale = StopScale.Half, IncludeWorking = true }, message);
    }

    [Fact]
    public void Read_NullBesideAnotherMember_IsNoConflict()
    {
        var (message, violations) = Read<EvaluateExposureRequest>("""{"settings":{"aperture":{"fNumber":8,"mark":null}}}""");
        Assert.Empty(violations);
        Assert.Equal(8, message.Settings.Aperture.FNumber);
    }

    [Theory]
    [InlineData("90s", 90, 0)]
    [InlineData("1.5s", 1, 500_000_000)]
    [InlineData("0.000000001s", 0, 1)]
    [InlineData("-2s", -2, 0)]
    public void Read_DurationText_IsATime(string text, long seconds, int nanos)
    {
        var (message, violations) = Read<RetryInfo>($$"""{"retryDelay":"{{text}}"}""");
        Assert.Empty(violations);
        Assert.Equal((seconds, nanos), (message.RetryDelay.Seconds, message.RetryDelay.Nanos));
    }

    [Theory]
    [InlineData("\"90\"")]
    [InlineData("90")]
    [InlineData("\"1,5s\"")]
    [InlineData("\"1.0000000001s\"")]
    [InlineData("\"1s\\n\"")]
    [InlineData("\"\\u0661s\"")]
    [InlineData("\"999999999999s\"")]
    [InlineData("\"\"")]
    public void Read_DurationTextThatIsNone_IsRefused(string text) =>
        Assert.Equal([("retry_delay", "WRONG_TYPE")], Read<RetryInfo>($$"""{"retryDelay":{{text}}}""").Violations);

    [Theory]
    [InlineData("2026-06-21T14:05:30Z", 0)]
    [InlineData("2026-06-21T16:05:30+02:00", 0)]
    [InlineData("2026-06-21T14:05:30.25Z", 250_000_000)]
    public void Read_MomentText_IsAMoment(string text, int nanos)
    {
        var (message, violations) = Read<SunMoment>($$"""{"time":"{{text}}"}""");
        Assert.Empty(violations);
        Assert.Equal((1782050730, nanos), (message.Time.Seconds, message.Time.Nanos));
    }

    [Theory]
    [InlineData("\"2026-06-21\"")]
    [InlineData("\"2026-06-21T14:05:30\"")]
    [InlineData("\"2026-06-31T14:05:30Z\"")]
    [InlineData("\"2026-06-21 14:05:30Z\"")]
    [InlineData("1782050730")]
    public void Read_MomentTextThatIsNone_IsRefused(string text) =>
        Assert.Equal([("time", "WRONG_TYPE")], Read<SunMoment>($$"""{"time":{{text}}}""").Violations);

    private static (T Message, List<(string Field, string Reason)> Violations) Read<T>(string json)
        where T : IMessage, new()
    {
        var (message, violations) = (new T(), new Violations());
        ContractJson.Read(message, Encoding.UTF8.GetBytes(json), violations);
        return (message, [.. violations.List.Select(violation => (violation.Field, violation.Reason))]);
    }
}

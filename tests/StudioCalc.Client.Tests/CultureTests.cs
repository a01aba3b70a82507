using System.Globalization;
using Grpc.Core;

namespace StudioCalc.Client.Tests;

/// <summary>Texts and the retry policy travel as texts inside the channel, so each is tried under a decimal comma.</summary>
public class CultureTests
{
    public static TheoryData<string> Cultures => ["de-DE", "nb-NO"];

    [Theory]
    [MemberData(nameof(Cultures))]
    public async Task Call_UnderADecimalComma_IsRetriedAndAnswered(string culture)
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        var script = new ScriptedExposure((call, _) => call <= 2 ? throw new RpcException(new(StatusCode.Unavailable, "")) : Task.CompletedTask);
        await using var host = await TestHost.StartAsync(script);
        await using var client = host.Connect();
        Assert.Equal("scripted", (await client.Exposure.EvaluateExposureAsync(Samples.Exposure())).ModelRevision);
        Assert.Equal(3, script.Calls);
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public async Task Refusal_UnderADecimalComma_WritesAPoint(string culture)
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        await using var host = await TestHost.StartAsync();
        await using var client = host.Connect();
        var error = await Assert.ThrowsAsync<InvalidRequestException>(() => client.Exposure.EvaluateExposureAsync(Samples.BadExposure()));
        var time = Assert.Single(error.Violations, violation => violation.Field == "settings.shutter_speed.time_s");
        Assert.Contains("0.000001", time.Description, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public async Task Timeout_UnderADecimalComma_WritesAPoint(string culture)
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        await using var host = await TestHost.StartAsync(new ScriptedExposure((_, context) => Task.Delay(Timeout.Infinite, context.CancellationToken)));
        await using var client = host.Connect(options => options.Timeout = TimeSpan.FromSeconds(0.25));
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Contains("timeout of 0.25 s", error.Message, StringComparison.Ordinal);
    }
}

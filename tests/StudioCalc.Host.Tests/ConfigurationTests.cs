using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class ConfigurationTests
{
    [Theory]
    [InlineData("Listen:GrpcPort is 70000", "Listen:GrpcPort=70000")]
    [InlineData("Listen:HttpPort is -1", "Listen:HttpPort=-1")]
    [InlineData("Listen:HttpPort", "Listen:HttpPort=many")]
    [InlineData("GrpcPort and HttpPort are all 9000", "Listen:GrpcPort=9000", "Listen:HttpPort=9000")]
    [InlineData("Listen:Address is 'localhost'", "Listen:Address=localhost")]
    [InlineData("Listen:GprcPort is not a setting", "Listen:GprcPort=9000")]
    [InlineData("StudioCalc:Limit is not a setting", "Limit:CallsPerSecond=1")]
    [InlineData("Security:ApiKeys", "Security:ApiKeys:0=short")]
    [InlineData("both ApiKeys and AllowAnonymous", "Security:ApiKeys:0=0123456789abcdef", "Security:AllowAnonymous=true")]
    [InlineData("Security:CorsOrigins", "Security:CorsOrigins:0=https://app.example/page")]
    [InlineData("Limits:CallsPerSecond is -1", "Limits:CallsPerSecond=-1")]
    [InlineData("Limits:MaxCallTime", "Limits:MaxCallTime=00:00:00")]
    [InlineData("Stop:Timeout", "Stop:Timeout=-00:00:01")]
    [InlineData("Telemetry:OtlpEndpoint", "Telemetry:OtlpEndpoint=collector")]
    public void Build_SettingNotUsable_SaysWhich(string part, params string[] settings)
    {
        var error = Assert.Throws<ConfigurationException>(() => RunningHost.Build(_ => { }, settings));

        Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.0.0.0")]
    [InlineData("::")]
    [InlineData("192.0.2.1")]
    public void Build_OpenToOtherMachinesWithoutKey_SaysWhatToSet(string address)
    {
        var error = Assert.Throws<ConfigurationException>(() => RunningHost.Build(_ => { }, "Listen:Address=" + address));

        Assert.Contains("StudioCalc__Security__ApiKeys__0", error.Message, StringComparison.Ordinal);
        Assert.Contains("StudioCalc:Security:AllowAnonymous=true", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Listen:Address=0.0.0.0", "Security:ApiKeys:0=0123456789abcdef")]
    [InlineData("Listen:Address=0.0.0.0", "Security:AllowAnonymous=true")]
    [InlineData("Listen:Address=::1")]
    [InlineData("Listen:Address=127.0.0.2")]
    public async Task Build_GuardedOrLoopback_IsAccepted(params string[] settings)
    {
        await using var app = RunningHost.Build(_ => { }, settings);

        Assert.NotNull(app.Services.GetService(typeof(Ports)));
    }

    [Fact]
    public void Defaults_AreLoopbackWithoutLimits()
    {
        var defaults = new StudioCalcOptions();

        Assert.Equal("127.0.0.1", defaults.Listen.Address);
        Assert.Empty(defaults.Security.CorsOrigins);
        Assert.Equal(0, defaults.Limits.CallsPerSecond);
        Assert.Null(defaults.Telemetry.OtlpEndpoint);
    }
}

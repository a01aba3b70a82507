using System.Net;
using Google.Rpc;
using Grpc.Health.V1;
using StudioCalc.V1;
using Xunit;

namespace StudioCalc.Host.Tests;

public sealed class SecurityTests(SecurityTests.KeyedHost fixture) : IClassFixture<SecurityTests.KeyedHost>
{
    private const string First = "a-key-of-24-letters-one1";
    private const string Second = "a-key-of-24-letters-two2";

    public static TheoryData<Way> Network => [Way.Grpc, Way.GrpcWeb, Way.Json];

    public static TheoryData<Way, string> Keyed => new()
    {
        { Way.Grpc, First }, { Way.GrpcWeb, First }, { Way.Json, First },
        { Way.Grpc, Second }, { Way.GrpcWeb, Second }, { Way.Json, Second },
    };

    [Theory]
    [MemberData(nameof(Network))]
    public async Task Call_WithoutKey_IsUnauthenticated(Way way) => Refused.Same(
        new(Code.Unauthenticated, "UNAUTHENTICATED", []), await Refused.ByAsync(Capabilities(way, null).GetCapabilitiesAsync(new())));

    [Theory]
    [MemberData(nameof(Network))]
    public async Task Call_WithAnotherKey_IsUnauthenticated(Way way) => Refused.Same(
        new(Code.Unauthenticated, "UNAUTHENTICATED", []), await Refused.ByAsync(Capabilities(way, First + "x").GetCapabilitiesAsync(new())));

    [Theory]
    [MemberData(nameof(Keyed))]
    public async Task Call_WithKey_IsAnswered(Way way, string key) =>
        Assert.NotEmpty((await Capabilities(way, key).GetCapabilitiesAsync(new())).ModelRevision);

    [Fact]
    public async Task Json_WithoutKey_Is401AndNamesTheScheme()
    {
        using var reply = await fixture.Host.Http.GetAsync(new Uri("/v1/capabilities", UriKind.Relative));

        Assert.Equal(HttpStatusCode.Unauthorized, reply.StatusCode);
        Assert.Equal("Bearer", reply.Headers.WwwAuthenticate.ToString());
    }

    [Fact]
    public async Task Json_UnknownPathWithoutKey_TellsNothing()
    {
        using var reply = await fixture.Host.Http.GetAsync(new Uri("/nope", UriKind.Relative));

        Assert.Equal(HttpStatusCode.Unauthorized, reply.StatusCode);
    }

    [Fact]
    public async Task Health_WithoutKey_IsAnswered()
    {
        using var live = await fixture.Host.Management.GetAsync(new Uri("/health/live", UriKind.Relative));
        var grpc = await new Grpc.Health.V1.Health.HealthClient(fixture.Host.Invoker(Way.Grpc)).CheckAsync(new());

        Assert.Equal(HttpStatusCode.OK, live.StatusCode);
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, grpc.Status);
    }

    private CapabilitiesService.CapabilitiesServiceClient Capabilities(Way way, string? key) => new(fixture.Host.Invoker(way, key));

    public sealed class KeyedHost : IAsyncLifetime
    {
        public RunningHost Host { get; private set; } = null!;

        public async Task InitializeAsync() =>
            Host = await RunningHost.StartAsync($"Security:ApiKeys:0={First}", $"Security:ApiKeys:1={Second}");

        public Task DisposeAsync() => Host.DisposeAsync().AsTask();
    }
}

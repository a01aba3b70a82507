using Grpc.Core;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using StudioCalc.Client.Embedded;
using StudioCalc.V1;
using UnitsNet;

namespace StudioCalc.Client.Tests;

/// <summary>The code of the guide, run.</summary>
public sealed class DocSnippets : IAsyncLifetime
{
    private TestHost _host = null!;
    private Uri address = null!;

    public async Task InitializeAsync()
    {
        _host = await TestHost.StartAsync();
        address = _host.Address;
    }

    public Task DisposeAsync() => _host.DisposeAsync().AsTask();

    [Fact]
    public async Task Connect_ToAHost_Answers()
    {
        // snippet: connect
        await using var client = StudioCalcClient.Connect(address);

        var answer = await client.Exposure.EvaluateExposureAsync(new()
        {
            Settings = CameraSettings.Of("f/5.6", "1/125", "100"),
            Light = Reading.Of(CameraSettings.Of("f/8", "1/125", "100")),
        });
        double stops = answer.LightOverSettingStops; // 1: the picture would be a stop too bright
        // end snippet
        Assert.Equal(1, stops, 1e-9);
    }

    [Fact]
    public async Task Connect_WithOptions_Answers()
    {
        // snippet: options
        await using var client = StudioCalcClient.Connect(new StudioCalcClientOptions
        {
            Address = address,
            ApiKey = "key-of-this-studio",
            Timeout = TimeSpan.FromSeconds(2),
            MaxAttempts = 2,
        });
        // end snippet
        Assert.NotEmpty((await client.Capabilities.GetCapabilitiesAsync(new())).Services);
    }

    [Fact]
    public async Task Connect_ToSeveralHosts_Answers()
    {
        await using var other = await TestHost.StartAsync();
        var second = other.Address;
        // snippet: several
        await using var client = StudioCalcClient.Connect(new StudioCalcClientOptions { Addresses = { address, second } });
        // end snippet
        Assert.NotEmpty((await client.Capabilities.GetCapabilitiesAsync(new())).Services);
    }

    [Fact]
    public async Task Connect_ToANameByDns_Answers()
    {
        var name = new Uri($"dns:///localhost:{address.Port}");
        // snippet: dns
        await using var client = StudioCalcClient.Connect(new StudioCalcClientOptions
        {
            Address = name, // such as dns:///studiocalc.studio.internal:8081
            DnsTls = false,
            DnsRefresh = TimeSpan.FromSeconds(10),
        });
        // end snippet
        Assert.NotEmpty((await client.Capabilities.GetCapabilitiesAsync(new())).Services);
    }

    [Fact]
    public async Task WaitUntilServing_OfAHost_Returns()
    {
        await using var client = StudioCalcClient.Connect(address);
        // snippet: wait
        await client.WaitUntilServingAsync(TimeSpan.FromSeconds(30));
        // end snippet
        Assert.NotEmpty((await client.Capabilities.GetCapabilitiesAsync(new())).Services);
    }

    [Fact]
    public async Task Embedded_WithoutAHost_Answers()
    {
        // snippet: embedded
        var client = EmbeddedStudioCalc.Create();
        var capabilities = await client.Capabilities.GetCapabilitiesAsync(new());
        // end snippet
        Assert.NotEmpty(capabilities.Services);
    }

    [Fact]
    public async Task Registration_OfAllKinds_Resolves()
    {
        var services = new ServiceCollection();
        // snippet: registration
        services.AddStudioCalcClient(options => options.Address = address);
        services.AddStudioCalcClient("second studio", options => options.Address = address);
        services.AddTransient<PowerCard>();
        // end snippet
        await using var provider = services.BuildServiceProvider();
        Assert.NotNull(provider.GetRequiredService<PowerCard>());
        Assert.NotNull(provider.GetRequiredKeyedService<StudioCalcClient>("second studio"));
    }

    [Fact]
    public async Task Registration_FromConfiguration_Resolves()
    {
        var services = new ServiceCollection();
        IConfiguration configuration = new ConfigurationBuilder().AddInMemoryCollection(
            new Dictionary<string, string?>(StringComparer.Ordinal) { ["StudioCalc:Address"] = address.ToString() }).Build();
        // snippet: configuration
        services.Configure<StudioCalcClientOptions>(configuration.GetSection("StudioCalc"));
        services.AddStudioCalcClient();
        // end snippet
        await using var provider = services.BuildServiceProvider();
        Assert.NotNull(provider.GetRequiredService<StudioCalcClient>());
    }

    [Fact]
    public async Task Stream_OfAPlan_TellsProgressAndThePlan()
    {
        var client = EmbeddedStudioCalc.Create();
        var request = Samples.Read<PlanShootRequest>("plan-shoot.json");
        var lines = new List<string>();
        // snippet: stream
        await foreach (var message in client.ShootPlan.StreamPlanAsync(new() { Plan = request }))
        {
            if (message.Progress is { } progress)
            {
                lines.Add($"{progress.Step}: {100 * progress.DoneShare:0} %");
            }
            else
            {
                lines.Add($"{message.Plan.Order.Solution?.Shots.Count} shots in order");
            }
        }
        // end snippet
        Assert.Equal("Setups: 0 %", lines[0]);
        Assert.Equal("12 shots in order", lines[^1]);
    }

    // snippet: user
    public sealed class PowerCard(StudioCalcClient client)
    {
        public async Task<string> TextAsync(BalanceFillRequest request, CancellationToken cancellationToken = default)
        {
            var answer = await client.LightingRatio.BalanceFillAsync(request, cancellationToken);
            return answer.Ways[0].Solution is { } set
                ? $"{set.Aperture.Mark}, {set.ShutterSpeed.Mark} s, power {set.Power.Fraction}"
                : $"{answer.Ways[0].NotReached.ShortfallStops:0.0} stops short";
        }
    }
    // end snippet

    [Fact]
    public async Task Errors_OfBadFields_AreNamed()
    {
        var client = EmbeddedStudioCalc.Create();
        var request = Samples.BadExposure();
        var lines = new List<string>();
        // snippet: errors
        try
        {
            await client.Exposure.EvaluateExposureAsync(request);
        }
        catch (InvalidRequestException error)
        {
            foreach (var (field, reason, description) in error.Violations)
            {
                lines.Add($"{field}: {description} ({reason})"); // settings.iso: ... (Required)
            }
        }
        catch (StudioCalcException error) when (error.Code == StatusCode.Unavailable)
        {
            lines.Add($"The host is away: {error.Message}");
        }
        // end snippet
        Assert.Equal(3, lines.Count);
        Assert.Contains(lines, line => line.StartsWith("settings.iso: ", StringComparison.Ordinal) && line.EndsWith("(Required)", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Balance_InUnitsOfTheStudio_TellsDistancesInThem()
    {
        var client = EmbeddedStudioCalc.Create();
        // snippet: units
        var request = new BalanceFillRequest
        {
            BackLight = Reading.Of(Illuminance.FromKilolux(4)),
            Fill = new()
            {
                Reading = Reading.OfFlash("f/5.6", "100"),
                Power = FlashPower.At("1/8"),
                Distance = Length.FromFeetInches(6, 6),
            },
            BackOverFillStops = -6,
            Placement = new() { Light = PlacedLight.Fill, OverSettingStops = 0 },
            Camera = new() { SyncSpeed = ShutterSpeed.At("1/200"), SlowestShutterSpeed = ShutterSpeed.Of(Duration.FromMilliseconds(20)) },
            ShutterSpeed = ShutterSpeed.At("1/60"),
            Iso = Iso.At("100"),
            Preference = { BalanceVariable.FlashPower },
        };
        var answer = await client.LightingRatio.BalanceFillAsync(request);
        var closer = answer.Ways[0].NotReached.Remedies.First(remedy => remedy.Kind == BalanceRemedyKind.MoveFlashCloser);
        string text = closer.Distance!.Value.FeetInches.ToArchitecturalString(8); // such as 1' - 7 1/4"
        // end snippet
        Assert.Matches(@"^\d+' - [\d /]+""$", text);
        Assert.True(closer.DistanceMm < 1981.2);
    }

    [Fact]
    public async Task PowerCard_OfAnAnswer_TellsWhatToSet()
    {
        // snippet: fake
        var fake = new FakeStudioCalc();
        fake.Answer((BalanceFillRequest _) => new BalanceFillResponse
        {
            Ways =
            {
                new BalanceWay
                {
                    Solution = new()
                    {
                        Aperture = new() { Mark = "f/5.6" },
                        ShutterSpeed = new() { Mark = "1/125" },
                        Power = new() { Fraction = "1/4" },
                    },
                },
            },
        });

        var text = await new PowerCard(fake.Client).TextAsync(new() { BackOverFillStops = 2 });

        Assert.Equal("f/5.6, 1/125 s, power 1/4", text);
        var sent = Assert.IsType<BalanceFillRequest>(Assert.Single(fake.Requests));
        Assert.Equal(2, sent.BackOverFillStops);
        // end snippet
    }

    // snippet: substitute
    private sealed class TwoStopsOver : ExposureClient
    {
        public override Task<EvaluateExposureResponse> EvaluateExposureAsync(
            EvaluateExposureRequest request, CancellationToken cancellationToken = default) =>
            Task.FromResult(new EvaluateExposureResponse { LightOverSettingStops = 2 });
    }

    private sealed class ClientWithTwoStopsOver : StudioCalcClient
    {
        public override ExposureClient Exposure { get; } = new TwoStopsOver();
    }
    // end snippet

    [Fact]
    public async Task Substitute_OfASubject_Answers() => Assert.Equal(
        2, (await new ClientWithTwoStopsOver().Exposure.EvaluateExposureAsync(new())).LightOverSettingStops);

    [Fact]
    public async Task PowerCard_OfARefusal_LetsItThrough()
    {
        // snippet: fake failures
        var fake = new FakeStudioCalc()
            .Refuse<BalanceFillRequest>("camera", RefusalReason.Required, "Required.")
            .Fail<EvaluateExposureRequest>(StatusCode.Unavailable);

        var error = await Assert.ThrowsAsync<InvalidRequestException>(() => new PowerCard(fake.Client).TextAsync(new()));
        Assert.Equal("camera", error.Violations[0].Field);
        // end snippet
        await Assert.ThrowsAsync<StudioCalcException>(() => fake.Client.Exposure.EvaluateExposureAsync(new()));
    }
}

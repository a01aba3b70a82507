using System.Net;
using System.Net.Sockets;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using StudioCalc.Contracts;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Client.Tests;

public class FailingHostTests
{
    [Fact]
    public async Task Call_ToAHostUnavailableTwice_IsAnsweredAtTheThirdAttempt()
    {
        var script = new ScriptedExposure((call, _) => call <= 2 ? throw Rpc(StatusCode.Unavailable) : Task.CompletedTask);
        await using var host = await TestHost.StartAsync(script);
        await using var client = host.Connect();
        Assert.Equal("scripted", (await client.Exposure.EvaluateExposureAsync(Samples.Exposure())).ModelRevision);
        Assert.Equal(3, script.Calls);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public async Task Call_ToAHostThatStaysUnavailable_IsTriedAsOftenAsAllowed(int maxAttempts)
    {
        var script = new ScriptedExposure((_, _) => throw Rpc(StatusCode.Unavailable));
        await using var host = await TestHost.StartAsync(script);
        await using var client = host.Connect(options => options.MaxAttempts = maxAttempts);
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(StatusCode.Unavailable, error.Code);
        Assert.Null(error.Reason);
        Assert.Equal(maxAttempts, script.Calls);
    }

    [Theory]
    [InlineData(StatusCode.InvalidArgument)]
    [InlineData(StatusCode.Internal)]
    [InlineData(StatusCode.ResourceExhausted)]
    public async Task Call_ThatFailsForGood_IsTriedOnce(StatusCode code)
    {
        var script = new ScriptedExposure((_, _) => throw Rpc(code));
        await using var host = await TestHost.StartAsync(script);
        await using var client = host.Connect();
        var error = await Assert.ThrowsAnyAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(code, error.Code);
        Assert.Equal(1, script.Calls);
    }

    [Fact]
    public async Task Call_ToASlowHost_EndsWithTheTimeout()
    {
        var script = new ScriptedExposure((_, context) => Task.Delay(Timeout.Infinite, context.CancellationToken));
        await using var host = await TestHost.StartAsync(script);
        await using var client = host.Connect(options => options.Timeout = TimeSpan.FromSeconds(0.25));
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(StatusCode.DeadlineExceeded, error.Code);
        Assert.Contains("timeout of 0.25 s", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Call_WithATimeout_CarriesItsDeadlineInUtc()
    {
        DateTime? deadline = null;
        var client = new StudioCalcClient(
            new InProcessCallInvoker().Intercept(new DeadlineReader(given => deadline = given)), TimeSpan.FromMinutes(1));
        await client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        Assert.Equal(DateTimeKind.Utc, deadline!.Value.Kind);
    }

    [Fact]
    public async Task Call_WithoutTimeout_CarriesNoDeadline()
    {
        DateTime? deadline = null;
        await using var host = await TestHost.StartAsync(new ScriptedExposure((_, context) =>
        {
            deadline = context.Deadline;
            return Task.CompletedTask;
        }));
        await using var client = host.Connect(options => options.Timeout = Timeout.InfiniteTimeSpan);
        await client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        Assert.Equal(DateTime.MaxValue, deadline);
    }

    [Fact]
    public async Task Call_CancelledByItsCaller_IsCancelledOnBothSides()
    {
        var started = new TaskCompletionSource();
        var stopped = new TaskCompletionSource();
        var script = new ScriptedExposure(async (_, context) =>
        {
            context.CancellationToken.Register(stopped.SetResult);
            started.SetResult();
            await stopped.Task;
        });
        await using var host = await TestHost.StartAsync(script);
        await using var client = host.Connect();
        using var cancellation = new CancellationTokenSource();
        var call = client.Exposure.EvaluateExposureAsync(Samples.Exposure(), cancellation.Token);
        await started.Task;
        await cancellation.CancelAsync();
        var error = await Assert.ThrowsAnyAsync<OperationCanceledException>(() => call);
        Assert.Equal(cancellation.Token, error.CancellationToken);
        await stopped.Task;
    }

    [Fact]
    public async Task Call_OverTheRate_TellsHowLongToWait()
    {
        await using var host = await TestHost.StartAsync(
            new ScriptedExposure((_, _) => throw Refusal.RateExceeded(TimeSpan.FromSeconds(1.5)).ToRpcException()));
        await using var client = host.Connect();
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(RefusalReason.RateExceeded, error.Reason);
        Assert.Equal(TimeSpan.FromSeconds(1.5), error.RetryAfter);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Call_RefusedUnderARequestId_TellsTheId(bool headersFirst)
    {
        await using var host = await TestHost.StartAsync(new ScriptedExposure(async (_, context) =>
        {
            if (headersFirst)
            {
                await context.WriteResponseHeadersAsync([new("x-request-id", "r-17")]);
            }
            else
            {
                context.GetHttpContext().Response.Headers["x-request-id"] = "r-17";
            }

            throw Rpc(StatusCode.InvalidArgument);
        }));
        await using var client = host.Connect();
        var error = await Assert.ThrowsAsync<InvalidRequestException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal("r-17", error.RequestId);
        Assert.Empty(error.Violations);
    }

    [Theory]
    [InlineData(HttpProtocols.Http1)]
    [InlineData(HttpProtocols.Http1AndHttp2)]
    public async Task Call_ToAPortOfHttp11_HintsAtTheOtherPort(HttpProtocols protocols)
    {
        await using var host = await TestHost.StartAsync(protocols);
        await using var client = host.Connect();
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Contains("HTTP/2", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Call_ToAServerThatKnowsHttp11Only_TellsThatHttp2IsMissing()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var serving = ServeAsync(listener);
        await using var client = StudioCalcClient.Connect(new Uri($"http://{listener.LocalEndpoint}"));
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        await client.DisposeAsync();
        listener.Stop();
        await Assert.ThrowsAnyAsync<Exception>(() => serving);
        Assert.Contains("HTTP/2", error.Message, StringComparison.Ordinal);

        static async Task ServeAsync(TcpListener listener)
        {
            while (true)
            {
                using var connection = await listener.AcceptTcpClientAsync();
                var stream = connection.GetStream();
                await stream.WriteAsync("HTTP/1.1 400 Bad Request\r\nContent-Length: 0\r\n\r\n"u8.ToArray());
                await stream.CopyToAsync(Stream.Null);
            }
        }
    }

    [Fact]
    public async Task Call_OverHttpsToAPortInClearText_HintsAtHttp()
    {
        await using var host = await TestHost.StartAsync();
        await using var client = host.Connect(options => options.Address = new UriBuilder(host.Address) { Scheme = "https" }.Uri);
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Contains("speaks clear text", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Call_InClearTextToAPortOfTls_HintsAtHttps()
    {
        await using var host = await TestHost.StartAsync(tls: true);
        await using var client = host.Connect(options => options.Address = new UriBuilder(host.Address) { Scheme = "http" }.Uri);
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.True(error.Message.Contains("https", StringComparison.Ordinal), error.ToString());
    }

    [Fact]
    public async Task Call_WithACertificateThatIsNotTrusted_TellsSo()
    {
        await using var host = await TestHost.StartAsync(tls: true);
        await using var client = host.Connect();
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Contains("certificate", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Call_ThatRunsIntoItsDeadlineWhileRetryingAClosedPort_TellsBoth()
    {
        Uri address;
        await using (var host = await TestHost.StartAsync())
        {
            address = host.Address;
        }

        await using var client = StudioCalcClient.Connect(
            new StudioCalcClientOptions { Address = address, MaxAttempts = 5, Timeout = TimeSpan.FromSeconds(0.4) });
        StudioCalcException error;
        do
        {
            error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        }
        while (error.Code == StatusCode.Unavailable);
        Assert.Equal(StatusCode.DeadlineExceeded, error.Code);
        Assert.Contains("deadline", error.Message, StringComparison.Ordinal);
        Assert.Contains("refused", error.Message, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Call_ThatRunsIntoItsDeadlineWhileConnecting_TellsThatNoHostWasReached()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start(backlog: 0);
        var waiting = new List<TcpClient>();
        for (var i = 0; i < 4; i++)
        {
            waiting.Add(new());
            _ = waiting[^1].ConnectAsync((IPEndPoint)listener.LocalEndpoint);
        }

        await using var client = StudioCalcClient.Connect(
            new StudioCalcClientOptions { Address = new($"http://{listener.LocalEndpoint}"), Timeout = TimeSpan.FromSeconds(0.5) });
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        waiting.ForEach(connection => connection.Dispose());
        Assert.Equal(StatusCode.DeadlineExceeded, error.Code);
        Assert.Contains("deadline", error.Message, StringComparison.Ordinal);
        Assert.Contains("No host could be reached", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Call_ToAClosedPort_TellsTheCause()
    {
        Uri address;
        await using (var host = await TestHost.StartAsync())
        {
            address = host.Address;
        }

        await using var client = StudioCalcClient.Connect(new StudioCalcClientOptions { Address = address, MaxAttempts = 1 });
        var error = await Assert.ThrowsAsync<StudioCalcException>(() => client.Exposure.EvaluateExposureAsync(Samples.Exposure()));
        Assert.Equal(StatusCode.Unavailable, error.Code);
        Assert.Contains("refused", error.Message, StringComparison.OrdinalIgnoreCase);
    }

    private sealed class DeadlineReader(Action<DateTime?> note) : Interceptor
    {
        public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
            TRequest request, ClientInterceptorContext<TRequest, TResponse> context, AsyncUnaryCallContinuation<TRequest, TResponse> continuation)
        {
            note(context.Options.Deadline);
            return continuation(request, context);
        }
    }

    private static RpcException Rpc(StatusCode code) => new(new(code, "As the test told."));
}

using System.Diagnostics;
using Grpc.Core;
using StudioCalc.Client.Embedded;

namespace StudioCalc.Client.Tests;

public sealed class TracingTests : IDisposable
{
    private readonly Activity _parent = new Activity("test").Start();
    private readonly List<Activity> _stopped = [];
    private readonly ActivityListener _listener;

    public TracingTests()
    {
        _listener = new()
        {
            ShouldListenTo = source => source.Name == StudioCalcClient.ActivitySourceName,
            Sample = (ref ActivityCreationOptions<ActivityContext> options) =>
                options.Parent.TraceId == _parent.TraceId ? ActivitySamplingResult.AllData : ActivitySamplingResult.None,
            ActivityStopped = activity =>
            {
                lock (_stopped)
                {
                    _stopped.Add(activity);
                }
            },
        };
        ActivitySource.AddActivityListener(_listener);
    }

    public void Dispose()
    {
        _listener.Dispose();
        _parent.Dispose();
    }

    [Fact]
    public async Task Call_ThatIsAnswered_IsOneActivityWithItsTags()
    {
        await using var host = await TestHost.StartAsync();
        await using var client = host.Connect();
        await client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        var activity = Assert.Single(_stopped);
        Assert.Equal("studiocalc.v1.ExposureService/EvaluateExposure", activity.DisplayName);
        Assert.Equal((ActivityKind.Client, ActivityStatusCode.Unset), (activity.Kind, activity.Status));
        Assert.Equal(_parent.SpanId, activity.ParentSpanId);
        Assert.Equal(
            new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                ["rpc.system"] = "grpc",
                ["rpc.service"] = "studiocalc.v1.ExposureService",
                ["rpc.method"] = "EvaluateExposure",
                ["rpc.grpc.status_code"] = 0,
                ["server.address"] = "127.0.0.1",
                ["server.port"] = host.Address.Port,
            },
            activity.TagObjects.ToDictionary(StringComparer.Ordinal));
        Assert.Same(_parent, Activity.Current);
    }

    [Fact]
    public async Task Call_ThatIsRefused_IsAnActivityInError()
    {
        await Assert.ThrowsAsync<InvalidRequestException>(
            () => EmbeddedStudioCalc.Create().Exposure.EvaluateExposureAsync(Samples.BadExposure()));
        var activity = Assert.Single(_stopped);
        Assert.Equal(ActivityStatusCode.Error, activity.Status);
        Assert.Equal((int)StatusCode.InvalidArgument, activity.GetTagItem("rpc.grpc.status_code"));
        Assert.Equal("InvalidArgument", activity.GetTagItem("error.type"));
        Assert.Null(activity.GetTagItem("server.address"));
    }

    [Fact]
    public async Task Call_TriedThreeTimes_IsOneActivity()
    {
        await using var host = await TestHost.StartAsync(
            new ScriptedExposure((call, _) => call <= 2 ? throw new RpcException(new(StatusCode.Unavailable, "")) : Task.CompletedTask));
        await using var client = host.Connect();
        await client.Exposure.EvaluateExposureAsync(Samples.Exposure());
        Assert.Single(_stopped);
    }
}

using System.Collections.Concurrent;
using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Client.Tests;

/// <summary>An exposure service that does what a test tells it, and counts.</summary>
public sealed class ScriptedExposure(Func<int, ServerCallContext, Task> script) : ExposureService.ExposureServiceBase
{
    private int _calls;

    public int Calls => _calls;

    public ConcurrentQueue<Metadata> Headers { get; } = new();

    public override async Task<EvaluateExposureResponse> EvaluateExposure(EvaluateExposureRequest request, ServerCallContext context)
    {
        Headers.Enqueue(context.RequestHeaders);
        await script(Interlocked.Increment(ref _calls), context);
        return new() { ModelRevision = "scripted" };
    }
}

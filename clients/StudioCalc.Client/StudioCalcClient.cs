using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;

namespace StudioCalc.Client;

/// <summary>All calls, a member a subject. Safe to use from many threads at once: create one and share it.</summary>
public class StudioCalcClient : IDisposable, IAsyncDisposable
{
    /// <summary>Name of the activity source for tracing: one activity a call.</summary>
    public const string ActivitySourceName = "StudioCalc.Client";

    private readonly CallPath _calls;
    private readonly IDisposable? _channel;

    /// <summary>Makes a client over a way of calling that the caller has made and keeps.</summary>
    /// <param name="invoker">Carries the calls.</param>
    /// <param name="timeout">The time allowed for each call; <see cref="Timeout.InfiniteTimeSpan"/> for no limit.</param>
    public StudioCalcClient(CallInvoker invoker, TimeSpan timeout)
        : this(new CallPath(invoker ?? throw new ArgumentNullException(nameof(invoker)), timeout), null)
    {
        if (!StudioCalcClientOptions.IsTimeout(timeout))
        {
            throw new ArgumentOutOfRangeException(nameof(timeout), timeout, StudioCalcClientOptions.TimeoutRule);
        }
    }

    /// <summary>For test doubles; a call that the double does not override fails with UNIMPLEMENTED.</summary>
    protected StudioCalcClient()
        : this(CallPath.Unanswered, null)
    {
    }

    internal StudioCalcClient(CallPath calls, IDisposable? channel)
    {
        (_calls, _channel) = (calls, channel);
        Capabilities = new(calls);
        DepthOfField = new(calls);
        Exposure = new(calls);
        FillPlacement = new(calls);
        Freshness = new(calls);
        LightingRatio = new(calls);
        PlateView = new(calls);
        ShootPlan = new(calls);
    }

    /// <summary>What the host can do and how far.</summary>
    public virtual CapabilitiesClient Capabilities { get; }

    /// <summary>Depth of field, focus and framing.</summary>
    public virtual DepthOfFieldClient DepthOfField { get; }

    /// <summary>Exposure of camera settings and of light.</summary>
    public virtual ExposureClient Exposure { get; }

    /// <summary>Where lights, window, card and table stand.</summary>
    public virtual FillPlacementClient FillPlacement { get; }

    /// <summary>How long plated food keeps its looks.</summary>
    public virtual FreshnessClient Freshness { get; }

    /// <summary>Ratios between lights.</summary>
    public virtual LightingRatioClient LightingRatio { get; }

    /// <summary>What a camera angle shows of a dish.</summary>
    public virtual PlateViewClient PlateView { get; }

    /// <summary>Order, times and promises of a day of shooting.</summary>
    public virtual ShootPlanClient ShootPlan { get; }

    /// <summary>Makes a client of the host at <paramref name="address"/>. It connects with the first call.</summary>
    /// <exception cref="ArgumentException">The address is neither http nor https.</exception>
    public static StudioCalcClient Connect(Uri address) => Connect(new StudioCalcClientOptions { Address = address });

    /// <summary>Makes a client of a remote host. It connects with the first call.</summary>
    /// <exception cref="ArgumentException">An option is missing, out of its range, or would send the key in clear text.</exception>
    public static StudioCalcClient Connect(StudioCalcClientOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var faults = options.Faults().ToList();
        return faults.Count == 0
            ? RemoteHost.Connect(options, loggers: null)
            : throw new ArgumentException(string.Join(' ', faults), nameof(options));
    }

    /// <summary>Makes any call of the contract by its descriptor, for tools that are told by the contract.</summary>
    /// <param name="method">The call; the services' descriptors hold it. Not one that answers with a stream.</param>
    /// <param name="request">A message of the call's request type.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call brought no answer.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task<IMessage> CallAsync(MethodDescriptor method, IMessage request, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(method);
        return method.IsServerStreaming
            ? throw new ArgumentException($"{method.Name} answers with a stream.", nameof(method))
            : UntypedCall.Of(method).RunAsync(_calls, request, cancellationToken);
    }

    /// <summary>Makes any call of the contract that answers with a stream by its descriptor.</summary>
    /// <param name="method">The call; the services' descriptors hold it.</param>
    /// <param name="request">A message of the call's request type.</param>
    /// <param name="cancellationToken">Cancels the call.</param>
    /// <returns>The answers as they come. The call starts when the first is asked for.</returns>
    /// <exception cref="InvalidRequestException">Fields of the request are refused; the exception names each.</exception>
    /// <exception cref="StudioCalcException">The call ended without all its answers.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual IAsyncEnumerable<IMessage> StreamAsync(MethodDescriptor method, IMessage request, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(method);
        return method.IsServerStreaming
            ? UntypedCall.Of(method).StreamAsync(_calls, request, cancellationToken)
            : throw new ArgumentException($"{method.Name} has one answer.", nameof(method));
    }

    /// <summary>Waits until the host is up and says that it serves.</summary>
    /// <param name="timeout">How long to wait at most; <see cref="Timeout.InfiniteTimeSpan"/> for no limit.</param>
    /// <param name="cancellationToken">Ends the waiting.</param>
    /// <exception cref="StudioCalcException">DEADLINE_EXCEEDED: the time is over; the message tells what the host said last.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public virtual Task WaitUntilServingAsync(TimeSpan timeout, CancellationToken cancellationToken = default)
    {
        if (!StudioCalcClientOptions.IsTimeout(timeout))
        {
            throw new ArgumentOutOfRangeException(nameof(timeout), timeout, StudioCalcClientOptions.TimeoutRule);
        }

        return ServingCheck.WaitAsync(_calls, timeout, cancellationToken);
    }

    /// <summary>Waits until the host is up and says that it serves, for as long as the token allows.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public Task WaitUntilServingAsync(CancellationToken cancellationToken) =>
        WaitUntilServingAsync(Timeout.InfiniteTimeSpan, cancellationToken);

    /// <summary>Closes the connection, if this client made it.</summary>
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes the connection, if this client made it.</summary>
    public ValueTask DisposeAsync()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
        return ValueTask.CompletedTask;
    }

    /// <summary>Closes the connection, if this client made it.</summary>
    protected virtual void Dispose(bool disposing)
    {
        if (disposing)
        {
            _channel?.Dispose();
        }
    }
}

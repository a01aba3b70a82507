using Grpc.Core;
using Grpc.Net.Client.Balancer;
using Microsoft.Extensions.Logging;

namespace StudioCalc.Client;

/// <summary>Lets the hosts of a channel take calls in turn, and remembers why none can be reached: a call that runs into its
/// deadline meanwhile would not tell.</summary>
internal sealed class Connections : LoadBalancerFactory
{
    public const string Policy = "studiocalc";

    private volatile Moment _now = new(ConnectivityState.Idle, null);
    private volatile Exception? _lastError;

    public override string Name => Policy;

    /// <summary>Why there is no connection, as a sentence; null when there is one or none was tried.</summary>
    public string? Trouble => (_now.State, _lastError) switch
    {
        (ConnectivityState.Ready or ConnectivityState.Idle, _) => null,
        (_, { } error) => $"No host could be reached; last connection error: {error.GetBaseException().Message}",
        (ConnectivityState.TransientFailure, _) => $"No host could be reached; last connection error: {_now.Detail}",
        _ => "No host could be reached: the connection was still being made.",
    };

    public override LoadBalancer Create(LoadBalancerOptions options) =>
        new InTurn(new Controller(this, options.Controller), options.LoggerFactory);

    private void Note(BalancerState state)
    {
        var failure = state.ConnectivityState == ConnectivityState.TransientFailure ? state.Picker.Pick(new()).Status : (Status?)null;
        _lastError = state.ConnectivityState == ConnectivityState.Ready ? null : failure?.DebugException ?? _lastError;
        _now = new(state.ConnectivityState, failure?.Detail);
    }

    private sealed record Moment(ConnectivityState State, string? Detail);

    private sealed class Controller(Connections connections, IChannelControlHelper channel) : IChannelControlHelper
    {
        public Subchannel CreateSubchannel(SubchannelOptions options) => channel.CreateSubchannel(options);

        public void RefreshResolver() => channel.RefreshResolver();

        public void UpdateState(BalancerState state)
        {
            connections.Note(state);
            channel.UpdateState(state);
        }
    }

    private sealed class InTurn(IChannelControlHelper channel, ILoggerFactory loggers) : SubchannelsLoadBalancer(channel, loggers)
    {
        protected override SubchannelPicker CreatePicker(IReadOnlyList<Subchannel> readySubchannels) => new Turns([.. readySubchannels]);
    }

    private sealed class Turns(Subchannel[] ready) : SubchannelPicker
    {
        private uint _turn;

        public override PickResult Pick(PickContext context) =>
            PickResult.ForSubchannel(ready[Interlocked.Increment(ref _turn) % ready.Length]);
    }
}

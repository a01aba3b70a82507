using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace StudioCalc.Host.Tests;

/// <summary>Keeps log lines together with the scopes that they stand in.</summary>
internal sealed class ScopeLog : ILoggerProvider, ILogger, ISupportExternalScope
{
    private IExternalScopeProvider? _scopes;

    public ConcurrentQueue<string> Lines { get; } = new();

    public ILogger CreateLogger(string categoryName) => this;

    public void SetScopeProvider(IExternalScopeProvider scopeProvider) => _scopes = scopeProvider;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => _scopes?.Push(state);

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(
        LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        var scopes = new List<string?>();
        _scopes?.ForEachScope((scope, list) => list.Add(scope?.ToString()), scopes);
        Lines.Enqueue($"{string.Join(" > ", scopes)} : {formatter(state, exception)}");
    }

    public void Dispose()
    {
    }
}

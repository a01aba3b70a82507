using System.Diagnostics.Metrics;
using System.Globalization;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.AspNetCore.Server;
using Microsoft.AspNetCore.Http.Features;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>Counts calls by method, gRPC status and way in. The server's own metrics show HTTP 200 for every gRPC refusal.</summary>
internal sealed partial class CallMeter : IDisposable
{
    public const string Name = "StudioCalc.Host";

    private readonly RequestDelegate _next;
    private readonly ILogger<CallMeter> _logger;
    private readonly Meter _meter;
    private readonly Counter<long> _calls;

    public CallMeter(RequestDelegate next, IMeterFactory meters, ILogger<CallMeter> logger)
    {
        (_next, _logger) = (next, logger);
        _meter = meters.Create(Name);
        _calls = _meter.CreateCounter<long>("studiocalc.calls", "{call}", "Calls by method, gRPC status and way in.");
    }

    public async Task InvokeAsync(HttpContext context)
    {
        var note = context.Features.GetRequiredFeature<CallNote>();
        try
        {
            await _next(context);
        }
        catch (Exception) when (Fail(note))
        {
            throw;
        }
        finally
        {
            Count(context, note);
        }
    }

    public void Dispose() => _meter.Dispose();

    // As a filter, it never handles the exception.
    private static bool Fail(CallNote note)
    {
        note.Code = Code.Internal;
        return false;
    }

    private void Count(HttpContext context, CallNote note)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<DocsDoor.Mark>() is not null)
        {
            return;
        }

        var method = MethodOf(context.GetEndpoint());
        var code = note.Code ?? CodeOf(context);
        _calls.Add(1, new("method", method), new("status", code.ToString()), new("way", note.Way.ToString()));
        LogCall(method, code, note.Way);
    }

    // Names come from the contract only, so that a stranger cannot make up new series.
    private static string MethodOf(Endpoint? endpoint) => endpoint?.Metadata switch
    {
        { } known when known.GetMetadata<GrpcMethodMetadata>() is { } grpc => grpc.Method.FullName,
        { } known when known.GetMetadata<MethodDescriptor>() is { } json => Contract.FullMethodName(json),
        _ => "unknown",
    };

    // A refusal without an answer has its status in the headers, every other call in the trailers.
    private static Code CodeOf(HttpContext context)
    {
        string? text = context.Response.Headers["grpc-status"];
        text ??= context.Features.Get<IHttpResponseTrailersFeature>()?.Trailers["grpc-status"];
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var code) ? (Code)code
            : context.Response.StatusCode < StatusCodes.Status400BadRequest ? Code.Ok
            : Code.Unknown;
    }

    [LoggerMessage(Level = LogLevel.Debug, Message = "{Method} {Code} over {Way}")]
    private partial void LogCall(string method, Code code, WayIn way);
}

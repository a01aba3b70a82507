using System.Net.Http.Headers;
using System.Text;
using Google.Api;
using Google.Protobuf;
using Grpc.Core;
using StudioCalc.Contracts;
using Status = Google.Rpc.Status;

namespace StudioCalc.Host.Tests;

/// <summary>Lets generated clients call over JSON, and turns refusals back into what a gRPC client throws.</summary>
internal sealed class JsonCallInvoker(HttpClient http) : CallInvoker
{
    public static JsonParser Parser { get; } = new(new JsonParser.Settings(64, Refusal.Details));

    public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request) =>
        new(CallAsync(method, options, request), Task.FromResult(Metadata.Empty), () => default, () => [], () => { });

    public override TResponse BlockingUnaryCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request) => throw new NotSupportedException();

    public override AsyncServerStreamingCall<TResponse> AsyncServerStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options, TRequest request) => throw new NotSupportedException();

    public override AsyncClientStreamingCall<TRequest, TResponse> AsyncClientStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw new NotSupportedException();

    public override AsyncDuplexStreamingCall<TRequest, TResponse> AsyncDuplexStreamingCall<TRequest, TResponse>(
        Method<TRequest, TResponse> method, string? host, CallOptions options) => throw new NotSupportedException();

    private async Task<TResponse> CallAsync<TRequest, TResponse>(Method<TRequest, TResponse> method, CallOptions options, TRequest request)
        where TRequest : class
        where TResponse : class
    {
        var descriptor = Contract.Services.SelectMany(service => service.Methods).Single(call => Contract.FullMethodName(call) == method.FullName);
        var rule = descriptor.GetOptions().GetExtension(AnnotationsExtensions.Http);
        using var message = rule.Post.Length > 0
            ? new HttpRequestMessage(HttpMethod.Post, rule.Post)
            {
                Content = new ByteArrayContent(Encoding.UTF8.GetBytes(ContractJson.Write((IMessage)request)))
                {
                    Headers = { ContentType = new MediaTypeHeaderValue("application/json") },
                },
            }
            : new HttpRequestMessage(HttpMethod.Get, rule.Get);
        foreach (var header in options.Headers ?? [])
        {
            message.Headers.Add(header.Key, header.Value);
        }

        using var reply = await http.SendAsync(message, options.CancellationToken);
        var text = await reply.Content.ReadAsStringAsync(options.CancellationToken);
        return reply.IsSuccessStatusCode
            ? (TResponse)Parser.Parse(text, descriptor.OutputType)
            : throw Parser.Parse<Status>(text).ToRpcException();
    }
}

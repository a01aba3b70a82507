using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;
using Microsoft.AspNetCore.WebUtilities;
using StudioCalc.Contracts;
using StudioCalc.Services;
using StudioCalc.V1;
using Status = Google.Rpc.Status;

namespace StudioCalc.Host;

/// <summary>One call of the contract for JSON callers.</summary>
internal sealed class JsonCall(MethodDescriptor method, MethodTable methods)
{
    private readonly string _name = Contract.FullMethodName(method);

    public async Task AnswerAsync(HttpContext context)
    {
        try
        {
            var isGet = HttpMethods.IsGet(context.Request.Method);
            if (!isGet && !JsonText.IsJson(context.Request))
            {
                await Replies.WriteAsync(context, Replies.WrongContentType(), StatusCodes.Status415UnsupportedMediaType);
                return;
            }

            var (request, refusal) = isGet
                ? ReadQuery(context.Request)
                : await ReadBodyAsync(context);
            if (refusal is not null)
            {
                await Replies.WriteAsync(context, refusal);
                return;
            }

            var deadline = TimeProvider.System.GetUtcNow().UtcDateTime + CallTimes.Of(context.Request);
            using var call = new InProcessCallContext(_name, null, deadline, context.RequestAborted);
            var answer = await methods.CallAsync(_name, request, call);
            await Replies.WriteJsonAsync(context, answer, StatusCodes.Status200OK);
        }
        catch (RpcException error)
        {
            await Replies.WriteAsync(context, error.GetRpcStatus() ?? Replies.Plain(error.Status));
        }
    }

    private (IMessage Request, Status? Refusal) ReadQuery(HttpRequest http)
    {
        var violations = new Violations();
        var request = Empty();
        ContractJson.ReadQuery(request, Parameters(http.QueryString), violations);
        if (http.ContentLength > 0)
        {
            violations.Add("", RefusalReason.Conflict, "GET takes its fields from the query and has no body; send a body with POST.");
        }

        return (request, violations.Any ? Refusal.InvalidFields(violations) : null);
    }

    private async Task<(IMessage Request, Status? Refusal)> ReadBodyAsync(HttpContext context)
    {
        var request = Empty();
        if (await JsonText.ReadAsync(context, ContractInterceptor.MaxRequestBytes) is not { } text)
        {
            return (request, Refusal.RequestTooLarge(ContractInterceptor.MaxRequestBytes));
        }

        var violations = new Violations();
        ContractJson.Read(request, text, violations);
        if (context.Request.QueryString.HasValue)
        {
            violations.Add("", RefusalReason.Conflict, "POST takes every field from its body; leave the query out.");
        }

        return (request, violations.Any ? Refusal.InvalidFields(violations) : null);
    }

    // One by one as written: a parsed query would merge names that differ in case only.
    private static IEnumerable<KeyValuePair<string, string>> Parameters(QueryString query)
    {
        foreach (var parameter in new QueryStringEnumerable(query.Value))
        {
            yield return new(parameter.DecodeName().ToString(), parameter.DecodeValue().ToString());
        }
    }

    private IMessage Empty() => method.InputType.Parser.ParseFrom(ByteString.Empty);
}

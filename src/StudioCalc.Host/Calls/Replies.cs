using System.Globalization;
using System.Text;
using Google.Protobuf;
using Google.Rpc;
using StudioCalc.Contracts;
using HttpResponse = Microsoft.AspNetCore.Http.HttpResponse;

namespace StudioCalc.Host;

/// <summary>Writes replies that do not come from a gRPC handler: JSON to JSON callers, and refusals in the form of the caller.</summary>
internal static class Replies
{
    private static Status Make(Code code, string message) => new() { Code = (int)code, Message = message };

    public static Status Plain(Grpc.Core.Status status) => Make((Code)status.StatusCode, status.Detail);

    /// <summary>Replies to a request whose handling failed for a reason of ours.</summary>
    public static void WriteUnexpected(IApplicationBuilder app) => app.Run(context =>
        WriteAsync(context, Make(Code.Internal, "The service failed; its log tells more under this request id.")));

    /// <summary>Refuses the request.</summary>
    public static Task WriteAsync(HttpContext context, Status refusal, int? httpStatus = null)
    {
        var note = context.Features.Get<CallNote>();
        note?.Code = (Code)refusal.Code;
        if (note?.Way is WayIn.Grpc or WayIn.GrpcWeb)
        {
            return WriteGrpcAsync(context.Response, refusal);
        }

        if (DetailOf<RetryInfo>(refusal)?.RetryDelay is { } delay)
        {
            context.Response.Headers.RetryAfter = (delay.Seconds + (delay.Nanos > 0 ? 1 : 0)).ToString(CultureInfo.InvariantCulture);
        }

        return WriteJsonAsync(context, refusal, httpStatus ?? HttpStatusOf(refusal));
    }

    /// <summary>Refuses a method that the path does not answer to.</summary>
    public static Task WriteWrongMethodAsync(HttpContext context, IEnumerable<string> allowed)
    {
        context.Response.Headers.Allow = string.Join(", ", allowed);
        return WriteAsync(context, Refusal.WrongMethod(), StatusCodes.Status405MethodNotAllowed);
    }

    /// <summary>Replies with a message as JSON.</summary>
    public static async Task WriteJsonAsync(HttpContext context, IMessage message, int httpStatus)
    {
        var text = Encoding.UTF8.GetBytes(ContractJson.Write(message));
        context.Response.StatusCode = httpStatus;
        context.Response.ContentType = "application/json";
        context.Response.ContentLength = text.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await context.Response.Body.WriteAsync(text, context.RequestAborted);
        }
    }

    private static Task WriteGrpcAsync(HttpResponse response, Status refusal)
    {
        response.StatusCode = StatusCodes.Status200OK;
        response.ContentType = "application/grpc";
        response.Headers["grpc-status"] = refusal.Code.ToString(CultureInfo.InvariantCulture);
        response.Headers["grpc-message"] = Uri.EscapeDataString(refusal.Message);
        response.Headers["grpc-status-details-bin"] = Convert.ToBase64String(refusal.ToByteArray());
        return response.CompleteAsync();
    }

    private static int HttpStatusOf(Status refusal) => (Code)refusal.Code switch
    {
        Code.InvalidArgument or Code.OutOfRange or Code.FailedPrecondition => StatusCodes.Status400BadRequest,
        Code.Unauthenticated => StatusCodes.Status401Unauthorized,
        Code.PermissionDenied => StatusCodes.Status403Forbidden,
        Code.NotFound => StatusCodes.Status404NotFound,
        Code.ResourceExhausted when DetailOf<QuotaFailure>(refusal) is not null => StatusCodes.Status413PayloadTooLarge,
        Code.ResourceExhausted => StatusCodes.Status429TooManyRequests,
        Code.Cancelled => StatusCodes.Status499ClientClosedRequest,
        Code.Unimplemented => StatusCodes.Status501NotImplemented,
        Code.Unavailable => StatusCodes.Status503ServiceUnavailable,
        Code.DeadlineExceeded => StatusCodes.Status504GatewayTimeout,
        _ => StatusCodes.Status500InternalServerError,
    };

    private static T? DetailOf<T>(Status refusal)
        where T : class, IMessage<T>, new() => refusal.GetDetail<T>();
}

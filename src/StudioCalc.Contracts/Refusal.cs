using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using StudioCalc.V1;

namespace StudioCalc.Contracts;

/// <summary>The refusals of the contract, as <c>google.rpc.Status</c> with typed details.</summary>
public static class Refusal
{
    /// <summary>The largest size of message and details. Larger trailers do not pass every client and proxy. [bytes]</summary>
    public const int MaxBytes = 4096;

    private static readonly EnumDescriptor Reasons =
        AnswerReflection.Descriptor.EnumTypes.Single(type => type.ClrType == typeof(RefusalReason));

    /// <summary>The detail types that a refusal may hold, for reading and writing it as JSON.</summary>
    public static TypeRegistry Details { get; } = TypeRegistry.FromMessages(
        ErrorInfo.Descriptor, BadRequest.Descriptor, RetryInfo.Descriptor, QuotaFailure.Descriptor);

    /// <summary>The reason's name without its prefix, as it stands in details: <c>OUT_OF_RANGE</c>.</summary>
    public static string NameOf(RefusalReason reason) =>
        Reasons.FindValueByNumber((int)reason).Name["REFUSAL_REASON_".Length..];

    /// <summary>INVALID_ARGUMENT that names every bad field, as far as the size allows.</summary>
    public static Status InvalidFields(Violations violations)
    {
        ArgumentNullException.ThrowIfNull(violations);
        var count = violations.List.Count;
        var bad = new BadRequest();
        var status = Make(
            Code.InvalidArgument,
            RefusalReason.InvalidFields,
            count == 1 ? "One field is refused; the details name it." : $"{count} fields are refused; the details name them.",
            bad);
        var size = status.CalculateSize();
        foreach (var violation in violations.List)
        {
            size += violation.CalculateSize() + 8;
            if (size > MaxBytes)
            {
                status.Message = $"{count} fields are refused; the details name the first {bad.FieldViolations.Count}.";
                break;
            }

            bad.FieldViolations.Add(violation);
        }

        status.Details[1] = Any.Pack(bad);
        return status;
    }

    /// <summary>RESOURCE_EXHAUSTED for a request over the size limit.</summary>
    public static Status RequestTooLarge(int maxBytes) => Make(
        Code.ResourceExhausted,
        RefusalReason.RequestTooLarge,
        $"The request is larger than the limit of {maxBytes} bytes.",
        Quota("request_bytes", maxBytes, $"At most {maxBytes} bytes to a request."));

    /// <summary>RESOURCE_EXHAUSTED for calls over the rate limit.</summary>
    public static Status RateExceeded(TimeSpan retryAfter) => Make(
        Code.ResourceExhausted,
        RefusalReason.RateExceeded,
        "Calls come faster than this host allows; wait as long as the details say.",
        new RetryInfo { RetryDelay = Duration.FromTimeSpan(retryAfter) });

    /// <summary>OUT_OF_RANGE for values that are fine alone but have no finite answer together.</summary>
    public static Status AnswerNotFinite() => Make(
        Code.OutOfRange, RefusalReason.AnswerNotFinite, "No finite answer exists for this combination of values.");

    /// <summary>DEADLINE_EXCEEDED for a call that ran out of time.</summary>
    public static Status DeadlineExceeded() => Make(
        Code.DeadlineExceeded, RefusalReason.DeadlineExceeded, "The time allowed for the call is over.");

    /// <summary>UNAUTHENTICATED for a call without a valid key.</summary>
    public static Status Unauthenticated() => Make(
        Code.Unauthenticated, RefusalReason.Unauthenticated, "This host asks for a key: authorization: Bearer <key>.");

    /// <summary>NOT_FOUND for a path that the contract does not have.</summary>
    public static Status UnknownPath() => Make(Code.NotFound, RefusalReason.UnknownPath, "The contract has no such path.");

    /// <summary>UNIMPLEMENTED for a path that answers to other HTTP methods.</summary>
    public static Status WrongMethod() => Make(
        Code.Unimplemented, RefusalReason.WrongMethod, "This path answers to other HTTP methods; Allow names them.");

    /// <summary>INVALID_ARGUMENT for a body that is not JSON by its headers.</summary>
    public static Status WrongContentType() => Make(
        Code.InvalidArgument, RefusalReason.WrongContentType, "Send the request as application/json in UTF-8, not compressed.");

    /// <summary>INVALID_ARGUMENT for bytes that are not a message.</summary>
    public static Status MalformedMessage() => Make(
        Code.InvalidArgument, RefusalReason.MalformedMessage, "The bytes are not a message of this call.");

    private static QuotaFailure Quota(string subject, long limit, string description) =>
        new() { Violations = { new QuotaFailure.Types.Violation { Subject = subject, QuotaValue = limit, Description = description } } };

    private static Status Make(Code code, RefusalReason reason, string message, IMessage? detail = null)
    {
        var status = new Status
        {
            Code = (int)code,
            Message = message,
            Details = { Any.Pack(new ErrorInfo { Domain = Contract.ErrorDomain, Reason = NameOf(reason) }) },
        };
        if (detail is not null)
        {
            status.Details.Add(Any.Pack(detail));
        }

        return status;
    }
}

using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>A call that brought no answer. The inner exception is the cause as gRPC tells it.</summary>
public class StudioCalcException : Exception
{
    /// <summary>Makes an exception.</summary>
    /// <param name="code">The status of the call.</param>
    /// <param name="message">What went wrong, for people.</param>
    /// <param name="cause">The error behind it.</param>
    public StudioCalcException(StatusCode code, string message, Exception? cause = null)
        : base(message, cause) => Code = code;

    /// <summary>The status of the call.</summary>
    public StatusCode Code { get; }

    /// <summary>Why the host refused the call; null when the failure is no refusal by the host.</summary>
    public RefusalReason? Reason { get; init; }

    /// <summary>How long to wait before the next call, when the host says so.</summary>
    public TimeSpan? RetryAfter { get; init; }

    /// <summary>The id under which the host's logs know the call, when its reply tells it.</summary>
    public string? RequestId { get; init; }
}

using Google.Protobuf;
using Google.Rpc;
using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Makes the calls that a plan is composed of, each as its own call would be answered.</summary>
/// <param name="context">Gets what the parts refuse, under the path at which the part stands.</param>
internal sealed class PlanParts(RequestContext context)
{
    private static readonly Dictionary<string, RefusalReason> Reasons =
        Enum.GetValues<RefusalReason>().ToDictionary(Refusal.NameOf, StringComparer.Ordinal);

    /// <summary>The answer of a part, with the paths of its advisories led on; null where it was not asked or is refused.</summary>
    /// <param name="request">What the part asks.</param>
    /// <param name="path">Where it stands in the request, and its answer in the answer.</param>
    /// <param name="call">Its call.</param>
    public async Task<TResponse?> AnswerAsync<TRequest, TResponse>(TRequest? request, FieldPath path, Func<TRequest, Task<TResponse>> call)
        where TRequest : class, IMessage
        where TResponse : class, IMessage
    {
        if (request is null)
        {
            return null;
        }

        return await AnswerAsync(path, async () => Lead(await call(request).ConfigureAwait(false), path.ToString())).ConfigureAwait(false);
    }

    /// <summary>What a part answers or reads, as it is; none where it is refused.</summary>
    /// <param name="path">Where the part stands in the request.</param>
    /// <param name="call">Its call.</param>
    public async Task<T?> AnswerAsync<T>(FieldPath path, Func<Task<T>> call)
        where T : class
    {
        try
        {
            return await call().ConfigureAwait(false);
        }
        catch (RpcException refused) when (refused.StatusCode == StatusCode.InvalidArgument
            && refused.GetRpcStatus()?.GetDetail<BadRequest>() is { } bad)
        {
            foreach (var violation in bad.FieldViolations)
            {
                context.Violations.Add(Under(path.ToString(), violation.Field), Reasons[violation.Reason], violation.Description);
            }

            return null;
        }
    }

    /// <summary>Leads the paths of an answer's advisories on.</summary>
    public static T Lead<T>(T answer, string path)
        where T : class, IMessage
    {
        foreach (var advisory in AdvisoriesOf(answer))
        {
            advisory.Field = Under(path, advisory.Field);
        }

        return answer;
    }

    /// <summary>The advisories of an answer, not those of messages inside it.</summary>
    public static IEnumerable<Advisory> AdvisoriesOf(IMessage answer) =>
        answer.Descriptor.FindFieldByName("advisories")?.Accessor.GetValue(answer) as IEnumerable<Advisory> ?? [];

    private static string Under(string path, string field) => field.Length == 0 || path.Length == 0 ? path + field : $"{path}.{field}";
}

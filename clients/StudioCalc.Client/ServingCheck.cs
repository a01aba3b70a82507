using System.Globalization;
using Grpc.Core;
using Grpc.Health.V1;

namespace StudioCalc.Client;

/// <summary>Waits for a host by asking its standard health service.</summary>
internal static class ServingCheck
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(0.25);

    public static async Task WaitAsync(CallPath calls, TimeSpan timeout, CancellationToken cancellationToken)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(timeout);
        var last = "it did not answer.";
        try
        {
            while (await TroubleAsync(calls, limit.Token).ConfigureAwait(false) is { } trouble)
            {
                last = trouble;
                await Task.Delay(Pause, limit.Token).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            throw new StudioCalcException(StatusCode.DeadlineExceeded, string.Create(CultureInfo.InvariantCulture,
                $"The host was not serving within {timeout.TotalSeconds} s: {last}"));
        }
    }

    // A host without a health service that answers at all counts as serving, as the health protocol has it.
    private static async Task<string?> TroubleAsync(CallPath calls, CancellationToken cancellationToken)
    {
        try
        {
            var health = new Health.HealthClient(calls.Invoker);
            var answer = await calls.RunAsync<HealthCheckRequest, HealthCheckResponse>(health.CheckAsync, new(), cancellationToken)
                .ConfigureAwait(false);
            return answer.Status == HealthCheckResponse.Types.ServingStatus.Serving ? null : $"it says {answer.Status}.";
        }
        catch (StudioCalcException error) when (error.Code == StatusCode.Unimplemented)
        {
            return null;
        }
        catch (StudioCalcException error) when (error.Code is StatusCode.Unavailable or StatusCode.DeadlineExceeded)
        {
            return error.Message;
        }
    }
}

using System.Runtime.CompilerServices;
using StudioCalc.Client;

namespace StudioCalc.Photos;

/// <summary>Reads photos and has their numbers worked out, some at once, in order, holding no more than those.</summary>
/// <param name="client">Answers the calls: remote or in process.</param>
/// <param name="options">What is known beside the photos.</param>
public sealed class PhotoEvaluator(StudioCalcClient client, PhotoOptions options)
{
    private readonly PhotoNumbers _numbers = new(client, options);

    /// <summary>Evaluates photos in their order.</summary>
    /// <param name="photos">The photos; taken one by one as answers are taken.</param>
    /// <param name="cancellation">Stops between photos, and calls on the way.</param>
    /// <exception cref="StudioCalcException">A call brought no answer; refusals of single photos are notes instead.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public async IAsyncEnumerable<PhotoAnswer> EvaluateAsync(IEnumerable<PhotoFile> photos, [EnumeratorCancellation] CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(photos);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var running = new Queue<Task<PhotoAnswer>>();
        try
        {
            foreach (var photo in photos)
            {
                if (running.Count >= options.AtOnce)
                {
                    yield return await running.Dequeue().ConfigureAwait(false);
                    cancellation.ThrowIfCancellationRequested();
                }

                running.Enqueue(Task.Run(() => _numbers.OfAsync(photo, stop.Token), stop.Token));
            }

            while (running.TryDequeue(out var next))
            {
                yield return await next.ConfigureAwait(false);
            }
        }
        finally
        {
            await stop.CancelAsync().ConfigureAwait(false);
            await Task.WhenAll((IEnumerable<Task>)running).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}

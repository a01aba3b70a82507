using System.Collections.Concurrent;

namespace StudioCalc.Planning;

/// <summary>Work on many replications, each for itself.</summary>
internal static class Replications
{
    private const int Chunk = 64;

    /// <summary>Runs all of them on some cores.</summary>
    public static void Run(int count, int cores, Action<int> one, CancellationToken cancellation) =>
        Run(count, cores, static () => true, (_, r) => one(r), cancellation);

    /// <summary>The same with a workplace for each core; which replication came to which is chance.</summary>
    /// <remarks>Helpers have threads of their own: the pool stays free for whoever wants to stop the work.</remarks>
    public static IReadOnlyCollection<TPlace> Run<TPlace>(
        int count, int cores, Func<TPlace> place, Action<TPlace, int> one, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var places = new ConcurrentBag<TPlace>();
        var begun = 0;
        var helpers = new Task[Math.Max(0, Math.Min(cores, (count + Chunk - 1) / Chunk) - 1)];
        for (var i = 0; i < helpers.Length; i++)
        {
            helpers[i] = Task.Factory.StartNew(Work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        }

        try
        {
            Work();
        }
        finally
        {
            Task.WaitAll(helpers, CancellationToken.None);
        }

        cancellation.ThrowIfCancellationRequested();
        return places;

        void Work()
        {
            var here = place();
            for (var first = Next(); first < count; first = Next())
            {
                for (var r = first; r < Math.Min(count, first + Chunk) && !cancellation.IsCancellationRequested; r++)
                {
                    one(here, r);
                }
            }

            places.Add(here);
        }

        int Next() => cancellation.IsCancellationRequested ? count : Interlocked.Add(ref begun, Chunk) - Chunk;
    }
}

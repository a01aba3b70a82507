using StudioCalc.Client.Embedded;
using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>Ten thousand photos pass through without being held.</summary>
public sealed class StreamTests
{
    private const int Photos = 10_000;
    private const int AtOnce = 4;

    [Fact]
    public async Task Evaluate_TenThousandPhotos_HoldsNoneOfThem()
    {
        var bytes = ExifFields.Usual().Jpeg();
        using var client = EmbeddedStudioCalc.Create();
        var evaluator = new PhotoEvaluator(client, new() { PermittedBlur = new() { DiameterUm = 30 }, AtOnce = AtOnce });
        var (taken, given, most) = (0, 0, 0);
        var held = new List<WeakReference>();
        long early = 0;
        await foreach (var answer in evaluator.EvaluateAsync(Source()))
        {
            Assert.Equal($"{given:00000}.jpg", answer.Photo.Name);
            given++;
            most = Math.Max(most, taken - given);
            if (given % 100 == 0)
            {
                held.Add(new(answer));
            }

            if (given == 1000)
            {
                early = GC.GetTotalMemory(forceFullCollection: true);
            }
        }

        Assert.Equal(Photos, given);
        Assert.True(most <= AtOnce, $"{most} photos were ahead.");
        var late = GC.GetTotalMemory(forceFullCollection: true);
        Assert.True(late - early < 4 << 20, $"{late - early} bytes more are held after {Photos} photos than after 1000.");
        Assert.True(held.SkipLast(1).Count(answer => answer.IsAlive) <= AtOnce);

        IEnumerable<PhotoFile> Source()
        {
            for (; taken < Photos; taken++)
            {
                yield return Sample.Of(bytes, $"{taken:00000}.jpg");
            }
        }
    }

    [Fact]
    public async Task Evaluate_Cancelled_TakesNoMorePhotos()
    {
        using var stop = new CancellationTokenSource();
        using var client = EmbeddedStudioCalc.Create();
        var bytes = ExifFields.Usual().Jpeg();
        var (taken, given) = (0, 0);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
        {
            await foreach (var answer in new PhotoEvaluator(client, new() { AtOnce = AtOnce }).EvaluateAsync(Source(), stop.Token))
            {
                if (++given == 10)
                {
                    await stop.CancelAsync();
                }
            }
        });
        Assert.True(taken <= 10 + AtOnce);

        IEnumerable<PhotoFile> Source()
        {
            while (true)
            {
                taken++;
                yield return Sample.Of(bytes);
            }
        }
    }

    [Fact]
    public async Task Evaluate_HostThatIsAway_FailsOnce()
    {
        var fake = new Client.FakeStudioCalc().Fail<V1.ConvertMarkRequest>(Grpc.Core.StatusCode.Unavailable);
        await Assert.ThrowsAsync<Client.StudioCalcException>(async () =>
        {
            await foreach (var answer in new PhotoEvaluator(fake.Client, new()).EvaluateAsync([Sample.Of(ExifFields.Usual())]))
            {
                Assert.Null(answer);
            }
        });
    }
}

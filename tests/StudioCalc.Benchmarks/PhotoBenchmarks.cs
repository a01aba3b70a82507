using BenchmarkDotNet.Attributes;
using StudioCalc.Client;
using StudioCalc.Client.Embedded;
using StudioCalc.Photos;
using StudioCalc.Tests;
using StudioCalc.V1;

namespace StudioCalc.Benchmarks;

/// <summary>Photos from a folder to exposure, framing and depth of field, in process; time and bytes are of one photo.</summary>
[MemoryDiagnoser]
public class PhotoBenchmarks : IDisposable
{
    private const int Photos = 500;

    private readonly StudioCalcClient _client = EmbeddedStudioCalc.Create();
    private readonly string _folder = Directory.CreateTempSubdirectory("studiocalc-photos-").FullName;

    [GlobalSetup]
    public void Write()
    {
        var photo = ExifFields.Usual().Jpeg();
        for (var i = 0; i < Photos; i++)
        {
            File.WriteAllBytes(Path.Combine(_folder, $"photo-{i:000}.jpg"), photo);
        }
    }

    [GlobalCleanup]
    public void Dispose()
    {
        _client.Dispose();
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }

        GC.SuppressFinalize(this);
    }

    [Benchmark(OperationsPerInvoke = Photos)]
    public async Task<int> InBulk()
    {
        var read = 0;
        var evaluator = new PhotoEvaluator(_client, new() { PermittedBlur = new() { Named = BlurCriterion.Diagonal1442 } });
        await foreach (var answer in evaluator.EvaluateAsync(PhotoFolder.Files(_folder)))
        {
            read += answer.DepthOfField is null ? 0 : 1;
        }

        return read == Photos ? read : throw new InvalidOperationException($"{read} of {Photos} photos have a depth of field.");
    }
}

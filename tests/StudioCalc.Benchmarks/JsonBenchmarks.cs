using System.Text;
using BenchmarkDotNet.Attributes;
using Google.Protobuf;
using StudioCalc.Contracts;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Benchmarks;

/// <summary>The strict JSON form, against the binary form of the same messages.</summary>
[MemoryDiagnoser]
public class JsonBenchmarks
{
    private static readonly BalanceFillRequest Request = Requests.Balance();
    private static readonly byte[] Binary = Request.ToByteArray();
    private static readonly byte[] Json = Encoding.UTF8.GetBytes(ContractJson.Write(Request));
    private static readonly BalanceFillResponse Answer =
        new LightingRatioService.LightingRatioServiceClient(new InProcessCallInvoker()).BalanceFill(Request);

    [Benchmark(Baseline = true)]
    public BalanceFillRequest ReadBinary() => BalanceFillRequest.Parser.ParseFrom(Binary);

    [Benchmark]
    public BalanceFillRequest ReadJson()
    {
        var message = new BalanceFillRequest();
        ContractJson.Read(message, Json, new());
        return message;
    }

    [Benchmark]
    public byte[] WriteBinary() => Answer.ToByteArray();

    [Benchmark]
    public string WriteJson() => ContractJson.Write(Answer);
}

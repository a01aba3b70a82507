using BenchmarkDotNet.Attributes;
using StudioCalc.Services;
using StudioCalc.V1;

namespace StudioCalc.Benchmarks;

/// <summary>Whole calls in process through the generated clients, against the call that computes nothing.</summary>
[MemoryDiagnoser]
public class CallBenchmarks
{
    private static readonly InProcessCallInvoker Invoker = new();
    private static readonly CapabilitiesService.CapabilitiesServiceClient Capabilities = new(Invoker);
    private static readonly ExposureService.ExposureServiceClient ExposureClient = new(Invoker);
    private static readonly LightingRatioService.LightingRatioServiceClient RatioClient = new(Invoker);

    private readonly EvaluateExposureRequest _exposure = Requests.Exposure();
    private readonly EvaluateExposureRequest _exposureWithWorking = Requests.Exposure(working: true);
    private readonly BalanceFillRequest _balance = Requests.Balance();
    private readonly BalanceFillRequest _balanceWithWorking = Requests.Balance(working: true);

    [Benchmark(Baseline = true)]
    public GetCapabilitiesResponse GetCapabilities() => Capabilities.GetCapabilities(new());

    [Benchmark]
    public bool CheckOfABalance() => MessageCheck<BalanceFillRequest>.Instance.Check(_balance, "", null);

    [Benchmark]
    public EvaluateExposureResponse EvaluateExposure() => ExposureClient.EvaluateExposure(_exposure);

    [Benchmark]
    public EvaluateExposureResponse EvaluateExposureWithWorking() => ExposureClient.EvaluateExposure(_exposureWithWorking);

    [Benchmark]
    public BalanceFillResponse BalanceFill() => RatioClient.BalanceFill(_balance);

    [Benchmark]
    public BalanceFillResponse BalanceFillWithWorking() => RatioClient.BalanceFill(_balanceWithWorking);
}

using BenchmarkDotNet.Running;
using StudioCalc.Benchmarks;

if (args is ["host"])
{
    await HostRate.RunAsync();
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(MathsBenchmarks).Assembly).Run(args);
}

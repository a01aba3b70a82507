using BenchmarkDotNet.Running;
using StudioCalc.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(MathsBenchmarks).Assembly).Run(args);

using System.Text;
using BenchmarkDotNet.Attributes;
using Google.Protobuf;
using StudioCalc.Contracts;
using StudioCalc.Services;
using StudioCalc.Tests;

namespace StudioCalc.Benchmarks;

/// <summary>Every call of the contract in process, with its sample request and without working: checks, mapping and maths.</summary>
[MemoryDiagnoser]
public class EveryCallBenchmarks : IDisposable
{
    private readonly MethodTable _methods = new();
    private readonly InProcessCallContext _context = new("", null, null, default);
    private IMessage _request = null!;
    private string _fullName = "";

    public static IEnumerable<string> Names => Contract.Services
        .SelectMany(service => service.Methods)
        .Where(method => !method.IsServerStreaming && method.InputType.Fields.InFieldNumberOrder().Count > 0)
        .Select(method => method.Name);

    [ParamsSource(nameof(Names))]
    public string Call { get; set; } = "";

    [GlobalSetup]
    public void Read()
    {
        var method = Contract.Services.SelectMany(service => service.Methods).Single(method => method.Name == Call);
        var file = string.Concat(Call.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
        var violations = new Violations();
        _request = method.InputType.Parser.ParseFrom(ByteString.Empty);
        ContractJson.Read(_request, Encoding.UTF8.GetBytes(File.ReadAllText(RepositoryRoot.At("docs", "examples", file + ".json"))), violations);
        if (violations.Any)
        {
            throw new InvalidOperationException($"The sample of {Call} cannot be read.");
        }

        method.InputType.FindFieldByName("include_working")?.Accessor.SetValue(_request, false);
        _fullName = Contract.FullMethodName(method);
    }

    [GlobalCleanup]
    public void Dispose()
    {
        _context.Dispose();
        GC.SuppressFinalize(this);
    }

    [Benchmark]
    public Task<IMessage> InProcess() => _methods.CallAsync(_fullName, _request, _context);
}

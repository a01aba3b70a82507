using System.Reflection;
using System.Runtime.Loader;

namespace StudioCalc.Services.Tests;

/// <summary>The general evaluator, loaded beside the services with libraries of its own.</summary>
/// <remarks>The protobuf library keeps options of descriptors in a way that two copies of the annotations' types in one
/// process disturb each other, even in separate assemblies: whichever contract is read second finds values of the other's
/// types. A load context of its own has its own protobuf library.</remarks>
internal sealed class IsolatedEvaluator : AssemblyLoadContext
{
    private readonly Func<string, byte[], IReadOnlyList<(string Path, string Rule)>> _brokenRules;

    public IsolatedEvaluator()
        : base("evaluator") => _brokenRules = LoadFromAssemblyName(new("StudioCalc.Contracts.Evaluated"))
            .GetType("StudioCalc.Contracts.Evaluated.Evaluator", throwOnError: true)!
            .GetMethod("BrokenRules")!
            .CreateDelegate<Func<string, byte[], IReadOnlyList<(string, string)>>>();

    public IReadOnlyList<(string Path, string Rule)> BrokenRules(string type, byte[] message) => _brokenRules(type, message);

    protected override Assembly? Load(AssemblyName assemblyName)
    {
        var file = Path.Combine(AppContext.BaseDirectory, assemblyName.Name + ".dll");
        return File.Exists(file) ? LoadFromAssemblyPath(file) : null;
    }
}

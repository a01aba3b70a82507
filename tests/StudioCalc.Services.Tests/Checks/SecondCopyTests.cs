using System.Reflection;
using System.Runtime.Loader;
using Google.Protobuf;

namespace StudioCalc.Services.Tests;

/// <summary>An application may use a general evaluator, which brings its own copy of the annotations' types, for its own messages.</summary>
public sealed class SecondCopyTests
{
    // In binary form: a shutter speed of 1e9 s, which breaks one rule.
    private static readonly byte[] TooLong = new V1.ShutterSpeed { TimeS = 1e9 }.ToByteArray();

    [Theory]
    [InlineData("evaluator, ours, evaluator")]
    [InlineData("ours, evaluator, ours")]
    public void Check_BesideAGeneralEvaluator_WorksWhoeverComesFirst(string order)
    {
        var fresh = new FreshLibraries();
        foreach (var turn in order.Split(", "))
        {
            Assert.Equal(1, turn == "ours" ? fresh.ByUs() : fresh.ByEvaluator());
        }
    }

    /// <summary>Everything loaded again, so that an order can be tried whatever other tests have loaded.</summary>
    private sealed class FreshLibraries() : AssemblyLoadContext("fresh")
    {
        public int ByEvaluator()
        {
            var evaluator = LoadFromAssemblyName(new("StudioCalc.Contracts.Evaluated"))
                .GetType("StudioCalc.Contracts.Evaluated.Evaluator", throwOnError: true)!;
            var broken = (IReadOnlyList<(string Path, string Rule)>)evaluator.GetMethod("BrokenRules")!
                .Invoke(null, ["studiocalc.v1.ShutterSpeed", TooLong])!;
            return broken.Count;
        }

        public int ByUs()
        {
            var contracts = LoadFromAssemblyName(new("StudioCalc.Contracts"));
            var type = contracts.GetType("StudioCalc.V1.ShutterSpeed", throwOnError: true)!;
            var parser = type.GetProperty("Parser")!.GetValue(null)!;
            var message = parser.GetType().GetMethod("ParseFrom", [typeof(byte[])])!.Invoke(parser, [TooLong]);
            var violations = Activator.CreateInstance(contracts.GetType("StudioCalc.Contracts.Violations", throwOnError: true)!)!;
            var check = LoadFromAssemblyName(new("StudioCalc.Services"))
                .GetType("StudioCalc.Services.MessageCheck`1", throwOnError: true)!.MakeGenericType(type);
            var instance = check.GetProperty("Instance")!.GetValue(null)!;
            Assert.Equal(false, check.GetMethod("Check")!.Invoke(instance, [message, "", violations]));
            return ((System.Collections.ICollection)violations.GetType().GetProperty("List")!.GetValue(violations)!).Count;
        }

        protected override Assembly? Load(AssemblyName assemblyName)
        {
            var file = Path.Combine(AppContext.BaseDirectory, assemblyName.Name + ".dll");
            return File.Exists(file) ? LoadFromAssemblyPath(file) : null;
        }
    }
}

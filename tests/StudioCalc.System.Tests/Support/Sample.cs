using System.Text;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>A call of the contract with its sample request.</summary>
internal sealed record Sample(MethodDescriptor Method, string Json)
{
    /// <summary>Every call that JSON callers have too. One whose request has no fields needs no sample.</summary>
    public static IReadOnlyList<Sample> All { get; } =
    [
        .. Contract.Services.SelectMany(service => service.Methods).Where(method => !method.IsServerStreaming).Select(method =>
            new Sample(method, method.InputType.Fields.InFieldNumberOrder().Count == 0 ? "{}" : File.ReadAllText(FileOf(method)))),
    ];

    public string Path => Contract.FullMethodName(Method);

    public IMessage Request
    {
        get
        {
            var request = Method.InputType.Parser.ParseFrom(ByteString.Empty);
            var violations = new Violations();
            ContractJson.Read(request, Encoding.UTF8.GetBytes(Json), violations);
            Assert.Empty(violations.List);
            return request;
        }
    }

    public static Sample Of(string method) => All.Single(sample => sample.Method.Name == method);

    public static string FileOf(MethodDescriptor method) => RepositoryRoot.At("docs", "examples", Kebab(method.Name) + ".json");

    private static string Kebab(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}

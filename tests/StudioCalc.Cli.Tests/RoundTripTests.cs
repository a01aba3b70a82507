using System.Collections;
using System.Text;
using CsCheck;
using Google.Protobuf;
using StudioCalc.Contracts;
using StudioCalc.Tests;

namespace StudioCalc.Cli.Tests;

/// <summary>A request, written as options and read again, is the same request.</summary>
public sealed class RoundTripTests
{
    public static TheoryData<string> Calls => [.. Tool.Calls.Where(call => call.InputType.Fields.InFieldNumberOrder().Count > 0).Select(call => call.Name)];

    public static TheoryData<string> Files =>
        [.. Directory.GetFiles(RepositoryRoot.At("docs", "examples"), "*.json").Select(file => Path.GetFileNameWithoutExtension(file)!)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Sample_AsOptions_IsTheSampleAgain(string file)
    {
        var call = Tool.Calls.Single(call => Words.Kebab(call.Name) == file);
        var sample = call.InputType.Parser.ParseFrom(ByteString.Empty);
        var violations = new Violations();
        ContractJson.Read(sample, Encoding.UTF8.GetBytes(File.ReadAllText(Tool.Sample(file))), violations);
        Assert.Empty(violations.List);

        var (request, refusals) = Tool.Read(call, [.. RequestWriter.Write(sample).SelectMany(option => option)]);

        Assert.Empty(refusals);
        Assert.Equal(sample, request);
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public void Sample_OfEveryCall_IsInsideTheProgram(string name)
    {
        var text = Samples.TextOf(Tool.Call(name));

        Assert.Equal(File.ReadAllText(Tool.Sample(Words.Kebab(name))).TrimEnd(), text);
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public void Request_OfAnyValues_AsOptions_IsTheRequestAgain(string name)
    {
        var call = Tool.Call(name);
        new RandomMessage(RandomValues.Valid).Of(call.InputType).Where(request => !HasHollow(request)).Sample(
            request =>
            {
                var (read, refusals) = Tool.Read(call, [.. RequestWriter.Write(request).SelectMany(option => option)]);
                Assert.Empty(refusals);
                Assert.Equal(request, read);
            },
            iter: 40,
            threads: 1);
    }

    // A message that is there but says nothing has no option; no request needs one.
    private static bool HasHollow(IMessage message) => message.Descriptor.Fields.InFieldNumberOrder()
        .Select(field => field.Accessor.GetValue(message))
        .SelectMany(value => value switch
        {
            IMessage inner => [inner],
            IList list => list.OfType<IMessage>(),
            _ => [],
        })
        .Any(inner => (inner.CalculateSize() == 0 && inner.Descriptor.Fields.InFieldNumberOrder().Count > 0 && inner is not Google.Protobuf.WellKnownTypes.Duration) || HasHollow(inner));
}

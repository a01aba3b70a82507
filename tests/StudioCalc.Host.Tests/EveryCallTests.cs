using System.Text;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Client;
using StudioCalc.Contracts;
using Xunit;

namespace StudioCalc.Host.Tests;

/// <summary>Every call of the contract, over every way in: the sample gets one answer, an empty request one refusal.</summary>
public sealed class EveryCallTests(HostFixture fixture) : IClassFixture<HostFixture>
{
    private static readonly Dictionary<string, MethodDescriptor> Methods = Contract.Services
        .SelectMany(service => service.Methods)
        .Where(method => method.InputType.Fields.InFieldNumberOrder().Count > 0)
        .ToDictionary(method => method.Name, StringComparer.Ordinal);

    public static TheoryData<string, Way> Calls
    {
        get
        {
            var data = new TheoryData<string, Way>();
            foreach (var name in Methods.Keys)
            {
                foreach (var way in Enum.GetValues<Way>().Where(way => way != Way.InProcess && (way != Way.Json || !Methods[name].IsServerStreaming)))
                {
                    data.Add(name, way);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public async Task Sample_OverANetwork_GetsTheAnswerOfTheProcess(string name, Way way)
    {
        var request = Empty(name);
        var violations = new Violations();
        ContractJson.Read(request, Encoding.UTF8.GetBytes(Requests.Text(Kebab(name) + ".json")), violations);
        Assert.Empty(violations.List);

        Assert.Equal(await AnswerAsync(name, Way.InProcess, request), await AnswerAsync(name, way, request));
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public async Task EmptyRequest_OverANetwork_GetsTheRefusalOfTheProcess(string name, Way way)
    {
        var here = await RefusalAsync(name, Way.InProcess);

        Assert.NotEmpty(here);
        Assert.Equal(here, await RefusalAsync(name, way));
    }

    // As text: binary messages drop the sign of a zero, which JSON keeps.
    private async Task<string> AnswerAsync(string name, Way way, IMessage request) =>
        string.Join('\n', (await AnswersAsync(name, way, request)).Select(answer => ContractJson.Write(answer))).Replace("-0,", "0,", StringComparison.Ordinal);

    private async Task<IEnumerable<string>> RefusalAsync(string name, Way way)
    {
        var refused = await Assert.ThrowsAsync<InvalidRequestException>(() => AnswersAsync(name, way, Empty(name)));
        return refused.Violations.Select(violation => $"{violation.Field} {violation.Reason} {violation.Description}");
    }

    // What a stream tells on the way hangs on the time that it takes; its last message does not.
    private async Task<IReadOnlyList<IMessage>> AnswersAsync(string name, Way way, IMessage request)
    {
        if (!Methods[name].IsServerStreaming)
        {
            return [await ClientOf(way).CallAsync(Methods[name], request)];
        }

        IMessage? last = null;
        await foreach (var answer in ClientOf(way).StreamAsync(Methods[name], request))
        {
            last = answer;
        }

        return [last!];
    }

    private StudioCalcClient ClientOf(Way way) => new(fixture.Host.Invoker(way), TimeSpan.FromMinutes(1));

    private static IMessage Empty(string name) => Methods[name].InputType.Parser.ParseFrom(ByteString.Empty);

    private static string Kebab(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}

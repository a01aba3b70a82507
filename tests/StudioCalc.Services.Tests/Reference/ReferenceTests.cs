using System.Globalization;
using System.Text;
using System.Text.Json;
using Google.Protobuf;
using Grpc.Core;
using StudioCalc.Contracts;

namespace StudioCalc.Services.Tests;

/// <summary>Sends every case through the public call and compares the answer, or the refusal, with what is expected.</summary>
public sealed class ReferenceTests
{
    private const string Refused = "refused.";

    public static TheoryData<string> Ids => [.. ReferenceCase.All.Select(one => one.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task Case_SentThroughTheCall_GivesWhatIsExpected(string id) =>
        await RunAsync(ReferenceCase.All.First(one => one.Id == id));

    [Fact]
    public void Ids_AreNotDoubled() =>
        Assert.Empty(ReferenceCase.All.GroupBy(one => one.Id, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key));

    [Fact]
    public async Task ValuesKnownToBeWrong_AreNotMatched()
    {
        var wrong = ReferenceCase.All.Where(one => one.PublishedValueNotToMatch is not null).ToList();
        Assert.NotEmpty(wrong);
        foreach (var one in wrong)
        {
            var bad = JsonSerializer.SerializeToElement(one.PublishedValueNotToMatch!.Value);
            var path = one.Expect.Single(expected => expected.Value.ValueKind == JsonValueKind.Number).Key;
            await Assert.ThrowsAnyAsync<Xunit.Sdk.XunitException>(() => RunAsync(one with { Expect = new() { [path] = bad } }));
        }
    }

    [Fact]
    public async Task Case_WithAnUnknownCallOrPath_Fails()
    {
        var one = ReferenceCase.All.First(known => known.Id == "EV-SET-1");
        await Assert.ThrowsAsync<KeyNotFoundException>(() => RunAsync(one with { Call = "ExposureService.Guess" }));
        await Assert.ThrowsAsync<KeyNotFoundException>(
            () => RunAsync(one with { Expect = new() { ["settings.guess"] = JsonSerializer.SerializeToElement(1) } }));
        await Assert.ThrowsAnyAsync<Xunit.Sdk.XunitException>(
            () => RunAsync(one with { Expect = new() { ["light.calibration_constant"] = JsonSerializer.SerializeToElement(1) } }));
        await Assert.ThrowsAnyAsync<Xunit.Sdk.XunitException>(
            () => RunAsync(one with { Request = JsonSerializer.SerializeToElement(new { guess = 1 }) }));
        await Assert.ThrowsAsync<KeyNotFoundException>(
            () => RunAsync(one with { Tolerance = JsonSerializer.SerializeToElement(new { other = 1 }) }));
    }

    [Theory]
    [InlineData("""[{"id":"A","call":"C","request":{},"expect":{"a":1},"tolerance":0,"kind":"published"}]""")]
    [InlineData("""[{"id":"A","call":"C","request":{},"expect":{"a":1},"tolerance":0,"source":" ","kind":"published"}]""")]
    [InlineData("""[{"id":"A","call":"C","request":{},"expect":{"a":1},"tolerance":0,"source":"S"}]""")]
    [InlineData("""[{"id":"A","call":"C","request":{},"expect":{"a":1},"tolerance":0,"source":"S","kind":"guess"}]""")]
    [InlineData("""[{"id":"A","call":"C","request":{},"expect":{},"tolerance":0,"source":"S","kind":"published"}]""")]
    [InlineData("""[{"id":"A","call":"C","request":{},"expect":{"a":1},"tolerance":0,"source":"S","kind":"published","more":1}]""")]
    public void File_WithoutSourceKindOrExpectation_Fails(string json) => Assert.Throws<JsonException>(() => ReferenceCase.Read(json));

    private static async Task RunAsync(ReferenceCase one)
    {
        var method = Calls.Method(one.Call);
        var request = (IMessage)Activator.CreateInstance(method.InputType.ClrType)!;
        var violations = new Violations();
        ContractJson.Read(request, Encoding.UTF8.GetBytes(one.Request.GetRawText()), violations);
        IMessage? answer = null;
        var refused = violations.List.Select(violation => (violation.Field, violation.Reason)).ToList();
        if (!violations.Any)
        {
            try
            {
                answer = await Calls.CallAsync(method, request);
            }
            catch (RpcException error)
            {
                refused.AddRange(Calls.Fields(error));
            }
        }

        var expected = one.Expect.Where(pair => pair.Key.StartsWith(Refused, StringComparison.Ordinal))
            .Select(pair => (pair.Key[Refused.Length..], pair.Value.GetString()!));
        Assert.Equal(expected, refused);
        foreach (var (path, value) in one.Expect.Where(pair => !pair.Key.StartsWith(Refused, StringComparison.Ordinal)))
        {
            Compare(one, path, value, Calls.ValueAt(answer!, path));
        }
    }

    private static void Compare(ReferenceCase one, string path, JsonElement expected, object? actual)
    {
        Assert.NotNull(actual);
        if (expected.ValueKind == JsonValueKind.String)
        {
            Assert.Equal(expected.GetString(), Assert.IsType<string>(actual));
            return;
        }

        var number = Calls.Number(actual);
        Assert.True(
            Math.Abs(number - expected.GetDouble()) <= one.ToleranceOf(path),
            $"{one.Id}, {path}: {number.ToString("R", CultureInfo.InvariantCulture)} instead of {expected.GetRawText()} ({one.Source})");
    }
}

using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Google.Rpc;

namespace StudioCalc.System.Tests;

/// <summary>A field that is written into the contract is known everywhere by that alone.</summary>
public sealed partial class NewFieldTests(ChangedCopy copy) : IClassFixture<ChangedCopy>
{
    private const string Comment = "How high the shelf stands that holds the plate";

    [PeerFact(Peer.Git)]
    public async Task Field_InJson_IsTakenWithinItsRange()
    {
        var (status, _) = await EvaluateAsync("750.5");

        Assert.Equal(HttpStatusCode.OK, status);
    }

    [PeerTheory(Peer.Git)]
    [InlineData("99", "shelf_height_mm OUT_OF_RANGE")]
    [InlineData("3000.5", "shelf_height_mm OUT_OF_RANGE")]
    [InlineData("\"750\"", "shelf_height_mm WRONG_TYPE")]
    public async Task Field_InJson_IsRefusedByName(string value, string field)
    {
        var (_, text) = await EvaluateAsync(value);

        JsonRoute.Refused(text).Is(Code.InvalidArgument, "INVALID_FIELDS", field);
    }

    [PeerFact(Peer.Git)]
    public async Task FieldAndValue_InTheHelp_HaveUnitAndComment()
    {
        var (exitCode, output, errors) = await copy.CommandLineAsync("exposure", "evaluate", "--help");
        var (_, other, _) = await copy.CommandLineAsync("lighting-ratio", "balance-fill", "--help");

        Assert.True(exitCode == 0, errors);
        var help = Space().Replace(output, " ");
        Assert.Contains("--shelf-height ", help, StringComparison.Ordinal);
        Assert.Contains(Comment + ", from 100 to 3000. Unset means 750. Figures here are in mm.", help, StringComparison.Ordinal);
        Assert.Contains("back|fill|shelf", other, StringComparison.Ordinal);
    }

    [PeerTheory(Peer.Git)]
    [InlineData("75 cm", 0, "")]
    [InlineData("750 mm", 0, "")]
    [InlineData("4 m", 4, "--shelf-height: ")]
    [InlineData("high", 2, "--shelf-height: ")]
    public async Task Field_AsAnOption_IsTakenOrRefusedByName(string value, int expected, string complaint)
    {
        var (exitCode, _, errors) = await copy.CommandLineAsync(
            "exposure", "evaluate", "--settings.aperture", "f/8", "--settings.shutter-speed", "1/125", "--settings.iso", "100", "--shelf-height", value);

        Assert.True(expected == exitCode, errors);
        Assert.Contains(complaint, errors, StringComparison.Ordinal);
    }

    [PeerFact(Peer.Git)]
    public async Task FieldAndValue_InOpenApi_HaveRangeAndComment()
    {
        var document = JsonNode.Parse(await JsonRoute.TextAsync(copy.Host, "/openapi.json"))!;

        var field = document["components"]!["schemas"]!["EvaluateExposureRequest"]!["properties"]!["shelfHeightMm"]!;
        Assert.Equal(("number", 100, 3000), (field["type"]!.GetValue<string>(), field["minimum"]!.GetValue<double>(), field["maximum"]!.GetValue<double>()));
        Assert.Contains(Comment, field["description"]!.GetValue<string>(), StringComparison.Ordinal);
        var values = document["components"]!["schemas"]!["Placement"]!["properties"]!["light"]!["enum"]!.AsArray();
        Assert.Contains("PLACED_LIGHT_SHELF", values.Select(value => value!.GetValue<string>()));
    }

    [PeerFact(Peer.Git)]
    public async Task FieldAndValue_OnTheContractPage_HaveRangeAndComment()
    {
        var page = await JsonRoute.TextAsync(copy.Host, "/docs/contract");

        var row = page.Split('\n').Single(line => line.Contains("<code>shelfHeightMm</code>", StringComparison.Ordinal));
        Assert.Contains("100 to 3000", row, StringComparison.Ordinal);
        Assert.Contains("mm", row, StringComparison.Ordinal);
        Assert.Contains(Comment, row, StringComparison.Ordinal);
        Assert.Contains("The light under the shelf.", page, StringComparison.Ordinal);
    }

    private async Task<(HttpStatusCode Status, string Text)> EvaluateAsync(string value)
    {
        var body = Sample.Of("EvaluateExposure").Json.TrimEnd().TrimEnd('}') + $", \"shelfHeightMm\": {value}}}";
        return await JsonRoute.PostAsync(copy.Host, "/v1/exposure:evaluate", body);
    }

    [GeneratedRegex(@"\s+", RegexOptions.None, 1000)]
    private static partial Regex Space();
}

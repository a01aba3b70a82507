using System.Net;
using System.Text.Json.Nodes;
using Google.Rpc;

namespace StudioCalc.System.Tests;

/// <summary>A field that is written into the contract is known everywhere by that alone.</summary>
public sealed class NewFieldTests(ChangedCopy copy) : IClassFixture<ChangedCopy>
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
}

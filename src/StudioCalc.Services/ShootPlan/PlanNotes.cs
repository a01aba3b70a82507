using System.Globalization;
using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What everybody on the set should know of a plan: its cautions first.</summary>
internal static class PlanNotes
{
    private static readonly string[] OverheadWords = ["overhead", "above", "top-down", "top down", "straight down", "flat lay"];

    public static void Note(RequestContext context, PlanShootRequest request, PlanShootResponse response, FieldPath root)
    {
        var cautions = PlanParts.AdvisoriesOf(response.Order).Where(IsCaution).ToList();
        cautions.Add(Advise.LooksNotSafety());
        if (request.Setups.FirstOrDefault(setup => setup.Fill is not null) is { } lit)
        {
            cautions.Add(Advise.FlashOnSet(root[PlanShootRequest.SetupsFieldNumber].At(request.Setups.IndexOf(lit))[PlanSetup.FillFieldNumber]));
        }

        if (request.Day.Crew is { Stations.Count: > 0 } || request.Setups.Count > 0)
        {
            cautions.Add(Advise.ElectricityOnSet());
        }

        cautions.AddRange(Parts(response).SelectMany(PlanParts.AdvisoriesOf).Where(IsCaution));
        if (IsOverhead(request) && !cautions.Exists(one => one.Code == AdvisoryCode.CameraOverhead))
        {
            cautions.Add(Advise.OverheadRigging());
        }

        // One stands for all that say the same.
        context.Advisories.InsertRange(0, cautions.DistinctBy(one => (one.Code, one.Text)).Select(one => one.Clone()));
    }

    private static bool IsCaution(Advisory advisory) => advisory.Severity == AdvisorySeverity.Caution;

    private static bool IsOverhead(PlanShootRequest request) =>
        request.Day.Shots.SelectMany(shot => shot.Attributes).Any(attribute => IsOverhead(attribute.Value))
        || request.Shots.Any(shot => shot.View?.Camera.Direction.ElevationDeg >= ViewNotes.OverheadDeg || shot.Focus?.Direction.ElevationDeg >= ViewNotes.OverheadDeg);

    // An attribute is free text: what sounds like straight down, or an angle from 60 on, counts. One caution too many does no harm.
    private static bool IsOverhead(string value) =>
        Array.Exists(OverheadWords, word => value.Contains(word, StringComparison.OrdinalIgnoreCase))
        || (value.IndexOf('°', StringComparison.Ordinal) is var end and > 0
            && double.TryParse(value[..end].Split(' ')[^1], NumberStyles.Float, CultureInfo.InvariantCulture, out var angle) && angle >= ViewNotes.OverheadDeg);

    private static IEnumerable<IMessage> Parts(PlanShootResponse response) =>
        response.Setups.SelectMany(setup => new IMessage?[] { setup.Fill, setup.Exposure })
            .Concat(response.Shots.SelectMany(shot => new IMessage?[] { shot.View, shot.Focus, shot.Budget }))
            .Append(response.Throughput)
            .OfType<IMessage>();
}

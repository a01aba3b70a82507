using System.Text.Json.Nodes;
using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

/// <summary>Published and closed-form check values of uncertain times, retakes, queues, quantiles and quotes.</summary>
public sealed class RateCases
{
    private static readonly JsonArray Cases =
        JsonNode.Parse(typeof(RateCases).Assembly.GetManifestResourceStream("rates.json")!)!["cases"]!.AsArray();

    public static TheoryData<string> Ids =>
        [.. Cases.Select(one => (string)one!["id"]!).Where(id => !id.StartsWith("pert-0", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Case_OfTheReference_IsMet(string id)
    {
        var one = Cases.Single(one => (string)one!["id"]! == id)!;
        var expected = one["expected"]!.AsObject();
        var answers = RateAnswers.Of((string)one["calculation"]!, one["inputs"]!);
        var tolerance = Math.Max((double)one["tolerance"]!, 1e-12);
        Assert.NotEmpty(expected);
        foreach (var (name, value) in expected)
        {
            Assert.True(answers.ContainsKey(name), $"{name} is not answered.");
            if (value is JsonValue number && number.TryGetValue(out double wanted))
            {
                Assert.Equal(wanted, Assert.IsType<double>(answers[name]), tolerance * Math.Max(1, Math.Abs(wanted)));
            }
            else
            {
                Assert.Equal(value!.ToJsonString(), answers[name].ToString());
            }
        }
    }

    // Activity nets are not part of the product: the test follows the longest path of means to check the times of which they are made.
    [Theory]
    [InlineData("pert-01")]
    [InlineData("pert-02")]
    public void Mean_OfActivities_SumsToThePublishedPath(string id)
    {
        var one = Cases.Single(one => (string)one!["id"]! == id)!;
        var net = ActivityNet.Of(one["inputs"]!["activities"]!);
        var path = net.CriticalPath();
        Assert.Equal((double)one["expected"]!["mean"]!, path.Sum(a => net.Times[a].Mean), 1e-3);
        Assert.Equal(one["expected"]!["critical_path"]!.AsArray().Select(a => (string)a!), path);
    }

    [Fact]
    public void Draws_OfANet_AreLateByTheMergeBias()
    {
        var expected = Cases.Single(one => (string)one!["id"]! == "pert-02-bias")!["expected"]!;
        var net = ActivityNet.Of(Cases.Single(one => (string)one!["id"]! == "pert-02")!["inputs"]!["activities"]!);
        var ends = Enumerable.Range(0, 20_000).Select(r => net.FinishMs((uint)r)).Order().ToArray();
        Assert.Equal((double)expected["mean"]!, ends.Average() / 1000, 0.05);
        Assert.Equal((double)expected["p10"]!, QuantileRanks.Value(ends, 0.1) / 1000.0, 0.08);
        Assert.Equal((double)expected["p50"]!, QuantileRanks.Value(ends, 0.5) / 1000.0, 0.08);
        Assert.Equal((double)expected["p90"]!, QuantileRanks.Value(ends, 0.9) / 1000.0, 0.08);
        Assert.Equal((double)expected["p_le_16"]!, ends.Count(end => end <= 16_000) / (double)ends.Length, 0.015);
    }

    private sealed record ActivityNet(IReadOnlyDictionary<string, ThreePoint> Times, IReadOnlyDictionary<string, string[]> Before)
    {
        public static ActivityNet Of(JsonNode activities) => new(
            activities.AsObject().ToDictionary(
                a => a.Key, a => new ThreePoint((double)a.Value!["a"]!, (double)a.Value["m"]!, (double)a.Value["b"]!, Spread.Pert)),
            activities.AsObject().ToDictionary(a => a.Key, a => a.Value!["pred"]!.AsArray().Select(p => (string)p!).ToArray()));

        public List<string> CriticalPath()
        {
            var ends = Ends(name => Times[name].Mean);
            var path = new List<string>();
            for (var at = ends.MaxBy(end => end.Value).Key; at is not null; at = Before[at].MaxBy(before => ends[before]))
            {
                path.Insert(0, at);
            }

            return path;
        }

        public long FinishMs(uint replication)
        {
            var names = Times.Keys.Order(StringComparer.Ordinal).ToList();
            return (long)Ends(name => Times[name].DrawMs((5, 5), replication, (uint)names.IndexOf(name), 0)).Values.Max();
        }

        // The activities stand in an order in which each comes after those before it.
        private Dictionary<string, double> Ends(Func<string, double> time)
        {
            var ends = new Dictionary<string, double>(StringComparer.Ordinal);
            foreach (var name in Times.Keys.Order(StringComparer.Ordinal))
            {
                ends[name] = Before[name].Select(before => ends[before]).DefaultIfEmpty().Max() + time(name);
            }

            return ends;
        }
    }
}

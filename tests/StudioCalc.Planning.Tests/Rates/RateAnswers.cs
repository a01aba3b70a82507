using System.Text.Json.Nodes;
using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

/// <summary>The answers of the project to the calculations of the reference cases, by name.</summary>
internal static class RateAnswers
{
    public static Dictionary<string, object> Of(string calculation, JsonNode inputs)
    {
        double N(string name) => (double)inputs[name]!;
        var none = new NoTrail();
        switch (calculation)
        {
            case "clark_max_mean_variance":
                var (mean, variance) = MergeBias.Later((N("m1"), N("s1")), (N("m2"), N("s2")), N("rho"));
                return new() { ["mean"] = mean, ["variance"] = variance };
            case "pert_beta_quantiles":
                var pert = new ThreePoint(N("a"), N("m"), N("b"), Spread.Pert);
                var width = pert.Longest - pert.Shortest;
                return new()
                {
                    ["alpha"] = 1 + 4 * (pert.Likely - pert.Shortest) / width,
                    ["beta"] = 1 + 4 * (pert.Longest - pert.Likely) / width,
                    ["mean"] = pert.Mean,
                    ["variance_beta"] = pert.Variance,
                    ["variance_pert_rule"] = width / 6 * (width / 6),
                    ["p10"] = pert.Quantile(0.1),
                    ["p50"] = pert.Quantile(0.5),
                    ["p90"] = pert.Quantile(0.9),
                };
            case "triangular_moments_quantiles":
                var triangle = new ThreePoint(N("a"), N("m"), N("b"), Spread.Triangle);
                return new()
                {
                    ["mean"] = triangle.Mean, ["variance"] = triangle.Variance,
                    ["p10"] = triangle.Quantile(0.1), ["p50"] = triangle.Quantile(0.5), ["p90"] = triangle.Quantile(0.9),
                };
            case "lognormal_from_p50_p90":
                var log = new ThreePoint(0, N("p50"), N("p90"), Spread.LogNormal);
                return new()
                {
                    ["mu"] = Math.Log(log.Quantile(0.5)),
                    ["sigma"] = Math.Log(log.Quantile(0.9) / log.Quantile(0.5)) / 1.2815515655446004,
                    ["mean"] = log.Mean, ["sd"] = Math.Sqrt(log.Variance), ["p10"] = log.Quantile(0.1),
                };
            case "expected_tries_uncapped":
            case "expected_tries_capped":
            case "tries_for_k_keepers":
                var odds = RetakeOdds.Evaluate(
                    new() { KeeperChance = N("p_keep"), Keepers = (int?)inputs["k"] ?? 1, MostTries = (int?)inputs["cap"] }, ref none);
                return new()
                {
                    ["mean"] = odds.ExpectedTries, ["variance"] = odds.TriesVariance,
                    ["p_give_up"] = odds.GiveUpChance, ["p90"] = (double)odds.TriesP90!,
                };
            case "frames_for_confidence":
            case "frames_for_k_keepers_confidence":
                var frames = Binomial.FewestTries(N("p_keep"), (int?)inputs["k"] ?? 1, N("confidence"), 1000)!.Value;
                return new() { ["frames"] = (double)frames, ["p_at_least_one"] = Binomial.Split(frames, N("p_keep"), 1).AtLeast };
            case "fire_lead_quantile":
                var steps = StepTrail.Start();
                var lead = FireLead.LeadS(
                    60 * N("kitchen_lead_p50_min"), 60 * N("kitchen_lead_p90_min"),
                    N("cost_photographer_idle_per_min"), N("cost_plate_waiting_per_min"), ref steps);
                return new() { ["lead_minutes"] = lead / 60, ["critical_ratio"] = steps.Steps.Single(step => step.Symbol == "F").Value };
            case "probability_plate_outlives_budget":
                var wait = NormalWait.Evaluate(
                    new()
                    {
                        ReadyS = 60 * (double)inputs["set_ready"]!["mean"]!, ReadyDeviationS = 60 * (double)inputs["set_ready"]!["sd"]!,
                        LeadS = 60 * (double)inputs["kitchen_lead"]!["mean"]!, LeadDeviationS = 60 * (double)inputs["kitchen_lead"]!["sd"]!,
                        BudgetS = 60 * N("budget"),
                    },
                    60 * N("fire_at"),
                    ref none);
                return new()
                {
                    ["p_break"] = wait.BreakChance, ["expected_idle_minutes"] = wait.IdleS / 60, ["expected_wait_minutes"] = wait.WaitS / 60,
                };
            case "probability_dish_finished_inside_budget":
                var plate = PlateSurvival.Evaluate(
                    new()
                    {
                        BudgetS = N("budget"), CarryS = N("carry"), SettleS = N("settle"), FrameTimeS = N("frame_cycle"),
                        KeeperChance = N("p_keep"), Keepers = (int)inputs["keepers_needed"]!,
                    },
                    ref none);
                return new() { ["frames_that_fit"] = (double)plate.FramesThatFit, ["p_success"] = plate.Chance };
            case "seconds_per_frame":
                return new() { ["seconds"] = FrameTime.Evaluate(N("flash_recycle"), N("camera_cycle"), N("operator"), ref none) };
            default:
                return OfADay(calculation, inputs);
        }
    }

    private static Dictionary<string, object> OfADay(string calculation, JsonNode inputs)
    {
        double N(string name) => (double)inputs[name]!;
        var none = new NoTrail();
        switch (calculation)
        {
            case "long_run_shots_per_hour":
                var cycle = inputs["cycle_seconds"]!;
                var steps = StepTrail.Start();
                var rate = ShotRate.LongRun(
                    (double)cycle["setup_mean"]!, (double)cycle["p_setup"]!, (double)cycle["swap"]!, (double)cycle["shoot_mean"]!, ref steps);
                return new() { ["shots_per_hour"] = rate, ["mean_cycle"] = steps.Steps.Single(step => step.Symbol == "Tc").Value };
            case "jensen_gap":
                var minutes = inputs["cycle_minutes_equally_likely"]!.AsArray().Select(one => (double)one!).ToList();
                return new()
                {
                    ["rate_of_mean"] = ShotRate.LongRun(0, 0, 0, 60 * minutes.Average(), ref none),
                    ["mean_of_rates"] = minutes.Average(one => ShotRate.LongRun(0, 0, 0, 60 * one, ref none)),
                };
            case "mmc":
                var queue = QueueTimes.Servers(N("lambda"), 1 / N("mu"), (int)inputs["servers"]!, ref none)!;
                return new()
                {
                    ["rho"] = queue.Utilisation, ["Lq"] = queue.Waiting, ["Wq"] = queue.WaitS, ["W"] = queue.TimeS, ["L"] = queue.Present,
                };
            case "tandem_mm1_time_in_system":
                var stages = inputs["mu"]!.AsArray().Select(mu => QueueTimes.Servers(N("lambda"), 1 / (double)mu!, 1, ref none)!).ToList();
                return new() { ["W_hours"] = stages.Sum(stage => stage.TimeS), ["L"] = stages.Sum(stage => stage.Present) };
            case "two_exponential_stages_no_buffer_throughput":
                return new() { ["throughput"] = ShotRate.PairWithoutBuffer((double)inputs["mu"]![0]!, (double)inputs["mu"]![1]!, ref none) };
            case "deterministic_line_finish":
                var times = inputs["stage_minutes"]!.AsArray().Select(one => 60 * (double)one!).ToList();
                return new() { ["finish"] = ShotRate.IdenticalDishesFinishS((int)inputs["n"]!, times) / 60 };
            case "order_statistic_interval":
                var ranks = QuantileRanks.Of((int)inputs["n"]!, N("p"), N("confidence"))!;
                return new() { ["lower_rank"] = (double)ranks.Lower, ["upper_rank"] = (double)ranks.Upper, ["coverage"] = ranks.Coverage };
            case "one_sided_tolerance_min_n":
                var n = QuantileRanks.FewestForMaximum(N("p"), N("confidence"));
                return new() { ["n"] = (double)n, ["coverage"] = Binomial.Split(n, 1 - N("p"), 1).AtLeast };
            case "quote_hours":
                var quote = QuoteSum.Evaluate(
                    new()
                    {
                        FixedS = 60 * N("fixed_minutes"), Setups = (int)inputs["setups"]!, SetupS = 60 * N("setup_minutes"),
                        Dishes = (int)inputs["dishes"]!, DishS = 60 * N("dish_minutes"), P90OverP50 = N("p90_over_p50"),
                    },
                    ref none);
                return new() { ["p50_hours"] = quote.P50S / 3600, ["p90_hours"] = quote.P90S / 3600 };
            case "quote_fit":
                var fit = QuoteSum.Evaluate(
                    new()
                    {
                        FixedS = 60 * N("setup_min"), Setups = 0, SetupS = 0, Dishes = (int)inputs["dishes"]!, DishS = 60 * N("per_dish_min"),
                        P90OverP50 = 1, DayS = 60 * N("window_min"),
                    },
                    ref none);
                return new() { ["total_min"] = fit.P50S / 60, ["dishes_that_fit"] = (double)fit.DishesThatFit! };
            case "one_at_a_time_swing":
                return Swings(inputs);
            case "philox4x32_10":
                var counter = Words(inputs["counter"]!);
                var key = Words(inputs["key"]!);
                var (a, b, c, d) = Philox.Words((key[0], key[1]), (counter[0], counter[1], counter[2], counter[3]));
                return new() { ["out"] = new JsonArray($"{a:x8}", $"{b:x8}", $"{c:x8}", $"{d:x8}").ToJsonString() };
            case "u01_from_two_words":
                var at = inputs["counter"]!.AsArray().Select(word => (uint)word!).ToArray();
                var words = Philox.Words(((uint)inputs["key"]![0]!, (uint)inputs["key"]![1]!), (at[0], at[1], at[2], at[3]));
                return new() { ["u"] = ((((ulong)words.Second << 32) | words.First) >> 11) * Math.Pow(2, -53) };
            default:
                return [];
        }
    }

    private static uint[] Words(JsonNode words) => [.. words.AsArray().Select(word => Convert.ToUInt32((string)word!, 16))];

    private static Dictionary<string, object> Swings(JsonNode inputs)
    {
        string[] names = ["setup", "n_setup", "dish", "n"];
        var ranges = names.Select(name =>
        {
            var middle = (double)inputs["base"]![name]!;
            var ends = inputs["low_high"]![name]?.AsArray();
            return (middle, ends is null ? middle : (double)ends[0]!, ends is null ? middle : (double)ends[1]!);
        }).ToList();
        double Model(IReadOnlyList<double> x) => x[0] * x[1] + x[2] * x[3];
        var swings = Tornado.Of(ranges, Model).Where(swing => swing.Size > 0).ToList();
        return new()
        {
            ["base"] = Model([.. ranges.Select(range => range.middle)]),
            ["swing"] = new JsonObject(swings.OrderBy(swing => swing.Input).Select(
                swing => KeyValuePair.Create(names[swing.Input], (JsonNode?)swing.Size))).ToJsonString(),
            ["rank"] = new JsonArray([.. swings.Select(swing => (JsonNode)names[swing.Input])]).ToJsonString(),
        };
    }
}

using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>What a day in its order cannot beat, without any simulation.</summary>
/// <remarks>
/// <code>
/// Nm = (N1 + ... + Nn) / n            expected tries of a shot, on average      (104)
/// W = mean work of a resource / its units                                       (105)
/// rate = 3600 n / max(W)              shots an hour                             (106)
/// </code>
/// <para>n: shots. N: (42) or (43). W in s, of the set: setups of this order, tries, and approvals that hold it. Nothing waits and no
/// plate is made again, so the day is slower. Source: counting; Wald's identity.</para>
/// </remarks>
/// <param name="MeanTries">Expected tries of a shot with one plate, on average over the shots. (104)</param>
/// <param name="Busiest">The index of the busiest resource, the first of equals.</param>
/// <param name="ShotsPerHour">Shots an hour that it allows; 0 where nothing takes time. (106)</param>
public sealed record DayRates(double MeanTries, int Busiest, double ShotsPerHour)
{
    /// <summary>Evaluates a day.</summary>
    /// <param name="day">The day with what of it is not certain.</param>
    /// <param name="setupMs">All setups of its order. [ms]</param>
    /// <param name="trail">Follows the sum.</param>
    public static DayRates Evaluate<TTrail>(UncertainDay day, long setupMs, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(day);
        var (work, tries, shots) = (new double[day.Day.Resources.Count], 0.0, 0);
        work[day.Day.Set] = setupMs / 1000.0 * (day.Uncertainty.SetupFactor?.Mean ?? 1);
        for (var b = 0; b < day.Day.Blocks.Count; b++)
        {
            var block = day.Day.Blocks[b];
            AddPlates(day, b, work);
            for (var k = 0; k < block.Shots.Count; k++)
            {
                var (expected, time) = Shot(day, block.Shots[k], Operation.Shoot(b, k), Operation.Approve(b, k));
                (tries, shots) = (tries + expected, shots + 1);
                work[day.Day.Set] += time;
            }
        }

        trail.Section("bounds");
        var n = trail.Given("n", shots, "", "shots");
        var N = trail.Given("N", tries, "", "expected tries of all shots, shoot plan (42), (43)");
        var mean = trail.Let("mean", N / n, "", "shoot plan (104)", "bounds.mean_tries");
        var busiest = 0;
        for (var i = 0; i < work.Length; i++)
        {
            work[i] = trail.Given($"W{i}", work[i] / day.Day.Resources[i].Capacity, "s", $"shoot plan (105), mean work: {day.Day.Resources[i].Id}");
            busiest = work[i] > work[busiest] ? i : busiest;
        }

        var W = trail.Given("W", work[busiest], "s", "the busiest of them");
        return new(
            mean,
            busiest,
            W > 0
                ? trail.Let("rate", 3600 * n / W, "", "shoot plan (106)", "bounds.bottleneck_shots_per_hour")
                : trail.Given("rate", 0, "", "nothing takes time", "bounds.bottleneck_shots_per_hour"));
    }

    /// <summary>Expected tries of a shot with one plate; 1 where its tries are not told. (42), (43)</summary>
    /// <param name="odds">Its tries.</param>
    public static double Tries(ShotOdds? odds) => Retakes(odds)?.ExpectedTries ?? 1;

    private static RetakeOdds? Retakes(ShotOdds? odds)
    {
        var none = default(NoTrail);
        return odds is null
            ? null
            : RetakeOdds.Evaluate(
                new() { KeeperChance = odds.KeeperChance, Keepers = odds.Keepers, MostTries = odds.MostTries, FramesPerTry = odds.FramesPerTry }, ref none);
    }

    private static void AddPlates(UncertainDay day, int block, double[] work)
    {
        var plates = day.Day.Blocks[block].Plates;
        for (var p = 0; p < plates.Count; p++)
        {
            for (var i = 0; i < plates[p].Stages.Count; i++)
            {
                if (plates[p].Stages[i].Resource is { } resource)
                {
                    work[resource] += Mean(day, Operation.Stage(block, p, i), plates[p].Stages[i].DurationMs);
                }
            }
        }
    }

    private static (double Tries, double SetS) Shot(UncertainDay day, Shot shot, Operation shoot, Operation approve)
    {
        var odds = day.Uncertainty.Odds.GetValueOrDefault(shoot);
        var retakes = Retakes(odds);
        var tries = retakes?.ExpectedTries ?? 1;
        var time = tries * (odds?.Try?.Mean ?? Mean(day, shoot, shot.ShootMs));
        return (tries, shot.ApprovalHoldsSet ? time + Mean(day, approve, shot.ApproveMs) * (retakes?.ExpectedFinished ?? 1) : time);
    }

    private static double Mean(UncertainDay day, Operation operation, long plannedMs) =>
        day.Uncertainty.Times.TryGetValue(operation, out var time) ? time.Mean : plannedMs / 1000.0;
}

using BenchmarkDotNet.Attributes;
using StudioCalc.Maths;
using StudioCalc.Planning;

namespace StudioCalc.Benchmarks;

/// <summary>Ten thousand days of 20 dishes with random times and reshoots, on one core and two, and a quote, against drawing the times alone.</summary>
[MemoryDiagnoser]
public class SimulationBenchmarks
{
    private const int Replications = 10_000;
    private const int Dishes = 20;

    private static readonly ShootDay Day = new()
    {
        Resources = [new() { Id = "station", Capacity = 2 }, new() { Id = "stylist" }, new() { Id = "set" }],
        Set = 2,
        Setups = new() { FirstMs = 1_800_000, SwapMs = 60_000, ChangeMs = [180_000, 240_000] },
        Blocks = [.. Enumerable.Range(0, Dishes).Select(Dish)],
    };

    private readonly DaySimulationInput _input = DaySimulationInput.Of(
        Day,
        Schedule.Of(Day, Enumerable.Range(0, Dishes)),
        FiringPolicy.Call,
        new()
        {
            Times = Enumerable.Range(0, Dishes).SelectMany(b => Day.Blocks[b].Plates[0].Stages.Select((stage, i) =>
                KeyValuePair.Create(Operation.Stage(b, 0, i), Around(stage.DurationMs)))).ToDictionary(),
            Odds = Enumerable.Range(0, Dishes).ToDictionary(
                b => Operation.Shoot(b, 0),
                b => new ShotOdds { KeeperChance = 0.5, MostTries = 6, FramesPerTry = 5, Try = Around(Day.Blocks[b].Shots[0].ShootMs / 2) }),
            SetupFactor = new(0.7, 1, 1.8, Spread.Pert),
        });

    [Benchmark(Baseline = true)]
    public long DrawsAlone()
    {
        var time = Around(300_000);
        var sum = 0L;
        for (var r = 0u; r < Replications; r++)
        {
            for (var i = 0u; i < Dishes * 6; i++)
            {
                sum += time.DrawMs((1, 1), r, i, 0);
            }
        }

        return sum;
    }

    [Benchmark]
    public DaySimulation DayOnOneCore() => DaySimulation.Run(_input, Replications, 1, 1, default);

    [Benchmark]
    public DaySimulation DayOnTwoCores() => DaySimulation.Run(_input, Replications, 1, 2, default);

    [Benchmark]
    public Quote QuoteOnTwoCores() => Quote.Draw(new() { Dishes = Dishes, DayHours = 8 }, Replications, 1, 2, default);

    private static Block Dish(int i) => new()
    {
        Id = $"dish {i}",
        Plates =
        [
            new()
            {
                Id = $"plate {i}",
                Stages =
                [
                    new() { Kind = StageKind.Cook, Resource = 0, DurationMs = 300_000 + 67_000 * (i * 7 % 11) },
                    new() { Kind = StageKind.PlateUp, Resource = 1, DurationMs = 90_000 + 13_000 * (i * 5 % 9) },
                    new() { Kind = StageKind.Carry, DurationMs = 40_000 },
                ],
                Budgets = [new("herbs", Moment.End(1), Moment.AfterStart(0, 60_000), 300_000)],
            },
        ],
        Shots = [new() { Id = $"shot {i}", ShootMs = 180_000 + 29_000 * (i * 3 % 7), ApproveMs = 30_000, Setup = [i % 3, i % 2] }],
    };

    private static ThreePoint Around(long ms) => new(ms / 1500.0, ms / 1000.0, ms / 600.0, Spread.Pert);
}

using BenchmarkDotNet.Attributes;
using StudioCalc.Planning;

namespace StudioCalc.Benchmarks;

/// <summary>Orders of food days against timing one order of twelve dishes.</summary>
[MemoryDiagnoser]
public class OrderBenchmarks
{
    private static readonly ShootDay TwelveDishes = Day(12);

    /// <summary>The number of dishes: proved up to 16, with a capped width from there.</summary>
    [Params(12, 16, 20, 24)]
    public int Dishes { get; set; }

    private ShootDay _day = TwelveDishes;

    [GlobalSetup]
    public void Setup() => _day = Day(Dishes);

    [Benchmark(Baseline = true)]
    public Schedule OneOrderOfTwelve() => Schedule.Of(TwelveDishes, Enumerable.Range(0, 12));

    [Benchmark]
    public ShootOrder Find() => ShootOrder.Find(_day);

    // Two stations, one stylist, one set; times vary by whole arithmetic, so that every run has the same day.
    private static ShootDay Day(int dishes) => new()
    {
        Resources = [new() { Id = "grill" }, new() { Id = "wok" }, new() { Id = "stylist" }, new() { Id = "set" }],
        Set = 3,
        Setups = new() { FirstMs = 600_000, SwapMs = 45_000, ChangeMs = [180_000, 240_000, 90_000] },
        Blocks = [.. Enumerable.Range(0, dishes).Select(i => Dish(i, new Random(1000 + i)))],
    };

    private static Block Dish(int index, Random random)
    {
        long Seconds(int least, int most) => 1000L * random.Next(least, most + 1);
        var (cook, plate, carry, shoot) = (Seconds(300, 1200), Seconds(90, 300), Seconds(20, 60), Seconds(180, 600));
        return new()
        {
            Id = $"dish {index}",
            Plates =
            [
                new()
                {
                    Id = "fresh",
                    Stages =
                    [
                        new() { Kind = StageKind.Cook, Resource = random.Next(2), DurationMs = cook },
                        new() { Kind = StageKind.PlateUp, Resource = 2, DurationMs = plate },
                        new() { Kind = StageKind.Carry, DurationMs = carry },
                    ],
                    Budgets =
                    [
                        new("herbs", Moment.End(1), Moment.AfterStart(0, 100_000), carry + 100_000 + Seconds(0, 120)),
                        new("heat", Moment.End(0), Moment.End(0), plate + carry + shoot + Seconds(30, 300)),
                    ],
                },
            ],
            Shots = [new() { Id = "shot", ShootMs = shoot, Setup = [random.Next(3), random.Next(4), random.Next(2)] }],
        };
    }
}

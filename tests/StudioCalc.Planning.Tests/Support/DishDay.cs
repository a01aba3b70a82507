using System.Text.Json.Nodes;

namespace StudioCalc.Planning.Tests;

/// <summary>A dish of the published days: cook, plate, carry, shoot. [s]</summary>
internal sealed record Dish(
    int Station, int Cook, int Plate, int Carry, int Shoot, int GarnishLastFrame, int GarnishBudget, int PassBudget, int Angle, int Background, int Lens)
{
    public static IReadOnlyList<Dish> Of(Case one) => one.Inputs["dishes"] is { } dishes
        ? [.. dishes.AsArray().Select(dish => Read(dish!))]
        : Draw((long)one.Inputs["seed"]!, (int)one.Inputs["n"]!, (int)one.Inputs["stations"]!);

    public static IReadOnlyList<Dish> Draw(long seed, int n, int stations)
    {
        var draws = new Lehmer(seed);
        return [.. Enumerable.Range(0, n).Select(_ => Draw(draws, stations))];
    }

    /// <summary>The day of these dishes: stations, one stylist, the set. [ms]</summary>
    public static ShootDay Day(IReadOnlyList<Dish> dishes)
    {
        var stations = dishes.Max(dish => dish.Station) + 1;
        return new()
        {
            Resources = [.. Enumerable.Range(0, stations).Select(i => new Resource { Id = $"station {i}" }), new() { Id = "stylist" }, new() { Id = "set" }],
            Set = stations + 1,
            Setups = new() { FirstMs = 600_000, SwapMs = 45_000, ChangeMs = [180_000, 240_000, 90_000] },
            Blocks = [.. dishes.Select((dish, i) => dish.Block($"dish {i}", stations))],
        };
    }

    private Block Block(string id, int stylist) => new()
    {
        Id = id,
        Plates =
        [
            new()
            {
                Id = "fresh",
                Stages =
                [
                    new() { Kind = StageKind.Cook, Resource = Station, DurationMs = 1000L * Cook },
                    new() { Kind = StageKind.PlateUp, Resource = stylist, DurationMs = 1000L * Plate },
                    new() { Kind = StageKind.Carry, DurationMs = 1000L * Carry },
                ],
                Budgets =
                [
                    new("garnish", Moment.End(1), Moment.AfterStart(0, 1000L * GarnishLastFrame), 1000L * GarnishBudget),
                    new("heat", Moment.End(0), Moment.End(0), 1000L * PassBudget),
                ],
            },
        ],
        Shots = [new() { Id = "shot", ShootMs = 1000L * Shoot, Setup = [Angle, Background, Lens] }],
    };

    private static Dish Draw(Lehmer draws, int stations)
    {
        var station = draws.Next(0, stations - 1);
        var (cook, plate, carry, shoot) = (draws.Next(300, 1200), draws.Next(90, 300), draws.Next(20, 60), draws.Next(180, 600));
        var lastFrame = Math.Min(shoot, draws.Next(60, 180));
        var garnish = carry + lastFrame + draws.Next(0, 120);
        var pass = plate + carry + shoot + draws.Next(30, 300);
        return new(station, cook, plate, carry, shoot, lastFrame, garnish, pass, draws.Next(0, 2), draws.Next(0, 3), draws.Next(0, 1));
    }

    private static Dish Read(JsonNode dish) => new(
        (int)dish["station"]!, (int)dish["cook"]!, (int)dish["plate"]!, (int)dish["carry"]!, (int)dish["shoot"]!, (int)dish["garnishLastFrame"]!,
        (int)dish["garnishBudget"]!, (int)dish["passBudget"]!, (int)dish["angle"]!, (int)dish["background"]!, (int)dish["lens"]!);
}

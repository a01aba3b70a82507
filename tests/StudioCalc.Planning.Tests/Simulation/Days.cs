using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

/// <summary>Days to simulate: one plate and one shot to a dish; station, stylist and set.</summary>
internal static class Days
{
    public const int Station = 0, Stylist = 1, Set = 2;

    public static ShootDay Of(params (int CookS, int PlateS, int ShootS)[] dishes) => new()
    {
        Resources = [new() { Id = "station" }, new() { Id = "stylist" }, new() { Id = "set" }],
        Set = Set,
        Blocks =
        [
            .. dishes.Select((dish, i) => new Block
            {
                Id = $"dish {i + 1}",
                Plates =
                [
                    new()
                    {
                        Id = $"plate {i + 1}",
                        Stages =
                        [
                            new() { Kind = StageKind.Cook, Resource = Station, DurationMs = 1000L * dish.CookS },
                            new() { Kind = StageKind.PlateUp, Resource = Stylist, DurationMs = 1000L * dish.PlateS, LagMs = 30_000 },
                        ],
                        Budgets = [new("herbs", Moment.End(1), Moment.End(0), 1000L * (dish.ShootS + 150))],
                    },
                ],
                Shots = [new() { Id = $"shot {i + 1}", ShootMs = 1000L * dish.ShootS, Setup = [i % 3] }],
            }),
        ],
        Setups = new() { FirstMs = 600_000, SwapMs = 45_000, ChangeMs = [120_000] },
    };

    public static ShootDay Twenty() => Of([.. Enumerable.Range(0, 20).Select(i => (300 + 67 * (i * 7 % 11), 90 + 13 * (i * 5 % 9), 180 + 29 * (i * 3 % 7)))]);

    public static DaySimulationInput Input(ShootDay day, FiringPolicy policy = FiringPolicy.Clock, DayUncertainty? uncertainty = null)
    {
        return DaySimulationInput.Of(day, Schedule.Of(day, Enumerable.Range(0, day.Blocks.Count)), policy, uncertainty ?? new());
    }

    /// <summary>Every time a third shorter to three quarters longer, setups too, keepers of a chance.</summary>
    public static DayUncertainty Loose(ShootDay day, double keeperChance = 0.6, int mostTries = 6) => new()
    {
        Times = day.Blocks.SelectMany((block, b) =>
            block.Plates.SelectMany((plate, p) => plate.Stages.Select((stage, i) => KeyValuePair.Create(Operation.Stage(b, p, i), Around(stage.DurationMs)))))
            .ToDictionary(),
        Odds = day.Blocks.SelectMany((block, b) => block.Shots.Select((shot, k) => KeyValuePair.Create(Operation.Shoot(b, k), new ShotOdds
        {
            KeeperChance = keeperChance, MostTries = mostTries, FramesPerTry = 3, Try = Around(shot.ShootMs / 2),
        }))).ToDictionary(),
        SetupFactor = new(0.7, 1, 1.8, Spread.Pert),
    };

    public static ThreePoint Around(long ms) => new(ms / 1500.0, ms / 1000.0, ms / 1000.0 * 1.75, Spread.Pert);
}

namespace StudioCalc.Planning.Tests;

/// <summary>What a random day may have.</summary>
[Flags]
internal enum Has
{
    Nothing = 0,
    Units = 1,
    Runner = 2,
    TwoPlates = 4,
    TwoShots = 8,
    Approval = 16,
    Waits = 32,
    PlateWaitsForSetup = 64,
    OpenTimes = 128,
    Daylight = 256,
    Positions = 512,
    NotBefore = 1024,
    Matrix = 2048,
    SideBySide = 4096,
    Everything = 8191,
}

/// <summary>Small random days with small numbers, so that ties and edges come up.</summary>
internal static class RandomDay
{
    private const int Stylist = 2;
    private const int Runner = 3;
    private const int Set = 4;

    public static ShootDay Of(int seed, int blocks, Has has)
    {
        var draws = new Lehmer(1 + Math.Abs((long)seed) % 2147483646);
        for (var i = 0; i < 10; i++)
        {
            draws.Next(0, 1);
        }

        bool May(Has what) => has.HasFlag(what) && draws.Next(0, 1) == 1;
        return new()
        {
            Resources =
            [
                new() { Id = "grill", Capacity = May(Has.Units) ? 2 : 1, Open = May(Has.OpenTimes) ? Open(draws) : [] },
                new() { Id = "wok" },
                new() { Id = "stylist", Capacity = May(Has.Units) ? 2 : 1, Open = May(Has.OpenTimes) ? Open(draws) : [] },
                new() { Id = "runner" },
                new() { Id = "set", Open = May(Has.OpenTimes) ? Open(draws) : [] },
            ],
            Set = Set,
            Setups = May(Has.Matrix)
                ? new() { FirstMs = 6, SwapMs = 1, Matrix = [.. Enumerable.Range(0, 3).Select(_ => Enumerable.Range(0, 3).Select(_ => (long)draws.Next(0, 12)).ToArray())] }
                : new() { FirstMs = 6, SwapMs = draws.Next(0, 2), ChangeMs = [5, 8], SideBySide = May(Has.SideBySide) },
            Blocks = [.. Enumerable.Range(0, blocks).Select(b => NewBlock(draws, b, May)
                with { Position = May(Has.Positions) && draws.Next(0, 3) == 0 ? b : null })],
        };
    }

    private static Block NewBlock(Lehmer draws, int index, Func<Has, bool> may)
    {
        var shots = may(Has.TwoShots) ? 2 : 1;
        var plates = may(Has.TwoPlates) ? 2 : 1;
        return new()
        {
            Id = $"b{index}",
            Plates = [.. Enumerable.Range(0, plates).Select(p => NewPlate(draws, p, shots, may))],
            Shots = [.. Enumerable.Range(0, shots).Select(k => new Shot
            {
                Id = $"s{k}",
                ShootMs = draws.Next(1, 10),
                ApproveMs = may(Has.Approval) ? draws.Next(0, 4) : 0,
                ApprovalHoldsSet = may(Has.Approval),
                Setup = [draws.Next(0, 2), draws.Next(0, 1)],
                SetupBeforePlate = !may(Has.PlateWaitsForSetup),
                Open = may(Has.Daylight) && draws.Next(0, 2) == 0 ? [new(draws.Next(0, 50), draws.Next(80, 600))] : [],
                Plates = plates == 2 && draws.Next(0, 2) == 0 ? [k % 2] : [],
            })],
        };
    }

    private static Plate NewPlate(Lehmer draws, int index, int shots, Func<Has, bool> may)
    {
        List<Stage> stages =
        [
            new() { Resource = draws.Next(0, 1), DurationMs = draws.Next(0, 14) },
            .. may(Has.Waits) ? [new Stage { DurationMs = draws.Next(0, 5) }] : (Stage[])[],
            new() { Resource = Stylist, DurationMs = draws.Next(1, 6), LagMs = may(Has.Waits) ? draws.Next(0, 2) : 0 },
            .. may(Has.Waits) ? [new Stage { Resource = Stylist, DurationMs = draws.Next(0, 3) }] : (Stage[])[],
            new() { Resource = may(Has.Runner) ? Runner : null, DurationMs = draws.Next(0, 3) },
        ];
        return new()
        {
            Id = $"p{index}",
            NotBeforeMs = may(Has.NotBefore) ? draws.Next(0, 40) : 0,
            Stages = stages,
            Budgets = [.. Enumerable.Range(0, draws.Next(0, 2)).Select(i => new Budget(
                $"c{i}",
                new(draws.Next(0, stages.Count - 1), draws.Next(0, 1) == 1, draws.Next(-1, 1)),
                new(draws.Next(0, shots - 1), draws.Next(0, 1) == 1, draws.Next(-1, 1)),
                draws.Next(4, 40)))],
        };
    }

    private static OpenTime[] Open(Lehmer draws)
    {
        var pause = draws.Next(25, 90);
        var from = draws.Next(0, 10);
        return [new(from, pause), new(pause + draws.Next(5, 30), 700)];
    }
}

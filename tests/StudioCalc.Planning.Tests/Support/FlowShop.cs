using System.Text.Json.Nodes;

namespace StudioCalc.Planning.Tests;

/// <summary>Classic flow shops as days: the machines before the last are stations, the last is the set.</summary>
internal static class FlowShop
{
    public static ShootDay Day(long[][] jobs, bool noWait = false, long[]? lags = null)
    {
        var machines = jobs[0].Length;
        return new()
        {
            Resources = [.. Enumerable.Range(0, machines).Select(i => new Resource { Id = $"m{i}" })],
            Set = machines - 1,
            Blocks = [.. jobs.Select((times, j) => new Block
            {
                Id = $"j{j}",
                Plates =
                [
                    new()
                    {
                        Id = "p",
                        Stages = [.. times.Take(machines - 1).Select((ms, i) =>
                            new Stage { Resource = i, DurationMs = ms, LagMs = i == machines - 2 ? lags?[j] ?? 0 : 0 })],
                        Budgets = noWait ? [new("all", Moment.AfterStart(0), Moment.End(0), times.Sum())] : [],
                    },
                ],
                Shots = [new() { Id = "s", ShootMs = times[^1] }],
            })],
        };
    }

    public static long[][] Jobs(Case one)
    {
        var inputs = one.Inputs;
        if (inputs["instance_ref"] is { } other)
        {
            return Jobs(Case.Of((string)other!));
        }

        if (inputs["machine1"] is { } first)
        {
            return [.. Numbers(first).Zip(Numbers(inputs["machine2"]!), (a, b) => new[] { a, b })];
        }

        if (inputs["p_job_by_machine"] is { } rows)
        {
            return [.. rows.AsArray().Select(row => Numbers(row!))];
        }

        var draws = new Lehmer((long)inputs["seed"]!);
        var (jobs, machines) = ((int)inputs["jobs"]!, (int)inputs["machines"]!);
        var table = Enumerable.Range(0, machines).Select(_ => Enumerable.Range(0, jobs).Select(_ => (long)draws.Next(1, 99)).ToArray()).ToArray();
        return [.. Enumerable.Range(0, jobs).Select(j => table.Select(row => row[j]).ToArray())];
    }

    public static long[] Numbers(JsonNode list) => [.. list.AsArray().Select(one => (long)one!)];
}

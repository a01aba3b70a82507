using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>How a day is to be simulated.</summary>
internal sealed record ThroughputRead
{
    public required Planning.FiringPolicy Policy { get; init; }

    public required int Replications { get; init; }

    public required uint Seed { get; init; }

    /// <summary>Of all that is told.</summary>
    public required Basis Basis { get; init; }

    /// <summary>How hard changed days are ordered.</summary>
    public required OrderEffort Effort { get; init; }

    /// <summary>Times, tries and the number of plates that may be made.</summary>
    public required DayUncertainty Uncertainty { get; init; }

    public IReadOnlyList<(DayChange Asked, UncertainDay Day)> Changes { get; init; } = [];

    public IReadOnlyList<StatedDefault> Defaults { get; init; } = [];
}

/// <summary>Reads how a day is to be simulated.</summary>
internal static class ThroughputReader
{
    private const int UsualReplications = 10_000;
    private const int LeastReplications = 100;
    private const int UsualMostPlates = 2;
    private const uint UsualSeed = 1;
    private const double MostDrawn = 20_000_000;

    /// <exception cref="Grpc.Core.RpcException">Any field is bad.</exception>
    public static ThroughputRead ReadThroughput(this RequestContext context, EstimateThroughputRequest request, DayRead day, FieldPath root)
    {
        var uncertainty = day.Uncertainty with { MostPlates = request.HasMostPlates ? (int)request.MostPlates : UsualMostPlates };
        var plain = day with { Uncertainty = uncertainty };
        var changesPath = root[EstimateThroughputRequest.ChangesFieldNumber];
        var changes = request.Changes.Select((change, i) => (change, Day: context.ReadChange(change, plain, changesPath.At(i)))).ToList();
        context.ThrowIfRefused();
        return new()
        {
            Policy = request.Policy.ToPlanning(),
            Replications = context.CheckReplications(request, plain, [.. changes.Select(change => change.Day!.Uncertainty)], root),
            Seed = request.HasSeed ? request.Seed : UsualSeed,
            Basis = request.Basis.ToPlanning(),
            Effort = new(request.HasEffort ? (int)request.Effort : null),
            Uncertainty = uncertainty,
            Changes = [.. changes.Select(change => (change.change, change.Day!))],
            Defaults = [.. ThroughputDefaults.Of(request, UsualMostPlates), .. ThroughputDefaults.Of(request.Day)],
        };
    }

    public static Planning.FiringPolicy ToPlanning(this V1.FiringPolicy policy) =>
        policy == V1.FiringPolicy.Call ? Planning.FiringPolicy.Call : Planning.FiringPolicy.Clock;

    /// <summary>The most replications of a day: draws of one, its plates made as often as they may be, times the days.</summary>
    public static double MostReplications(DayRead day, IEnumerable<DayUncertainty> days) => MostDrawn / days.Sum(uncertainty =>
        uncertainty.MostPlates * day.Day.Blocks.SelectMany((block, b) => block.Shots.Select((_, k) =>
            2 + 2 * DayRates.Tries(uncertainty.Odds.GetValueOrDefault(Operation.Shoot(b, k)))).Append(block.Plates.Sum(plate => plate.Stages.Count))).Sum());

    private static int CheckReplications(
        this RequestContext context, EstimateThroughputRequest request, DayRead day, IEnumerable<DayUncertainty> changed, FieldPath root)
    {
        var most = MostReplications(day, changed.Prepend(day.Uncertainty));
        if (most < LeastReplications)
        {
            context.Violations.Add(root[EstimateThroughputRequest.DayFieldNumber][V1.ShootDay.ShotsFieldNumber].ToString(), RefusalReason.OutOfRange,
                "With these tries, plates and changes even 100 replications are too many draws: expect fewer tries, or ask for fewer changes.");
        }
        else if (request.HasReplications && request.Replications > most)
        {
            context.Violations.Add(root[EstimateThroughputRequest.ReplicationsFieldNumber].ToString(), RefusalReason.OutOfRange,
                FormattableString.Invariant($"With these shots, tries, plates and changes at most {Math.Floor(most)}."));
        }

        context.ThrowIfRefused();
        return request.HasReplications ? (int)request.Replications : (int)Math.Min(UsualReplications, most);
    }
}

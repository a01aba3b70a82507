using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A day as far as its fields tell it: the looks of its food are still to be computed.</summary>
internal sealed record DayDraft
{
    public required V1.ShootDay Asked { get; init; }

    public required CrewRead Crew { get; init; }

    public required IReadOnlyList<DayPlateRead> Plates { get; init; }

    public required IReadOnlyList<DayShotRead> Shots { get; init; }

    public required ShotGroups Groups { get; init; }

    public required IReadOnlyDictionary<string, int> ShotOf { get; init; }

    public required IReadOnlyList<int?> Positions { get; init; }

    public required SetChangesRead Changes { get; init; }

    /// <summary>The shot that needs a component last; none if its plate is in no shot.</summary>
    public static int? LastShot(PlateBudget budget, int plate, ShotGroups groups, IReadOnlyDictionary<string, int> shotOf) => budget.HasLastShot
        ? shotOf[budget.LastShot]
        : groups.Shots.SelectMany(group => group).Where(shot => groups.PlatesOf[shot].Contains(plate)).Select(shot => (int?)shot).LastOrDefault();

    /// <summary>Computes the looks, notes what a person should know of them, and puts the day together.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public DayRead Complete(RequestContext context, CancellationToken cancellation) =>
        Arrange(Groups, Positions, ComputeLooks(context, cancellation));

    /// <summary>Computes the looks, and notes what a person should know of them.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public DayLooks ComputeLooks(RequestContext context, CancellationToken cancellation)
    {
        var none = default(NoTrail);
        return new([.. Plates.Select(plate => plate.Budgets.Select(budget =>
        {
            if (budget.Food is not { } food)
            {
                return new DayLook(budget.Asked.Limit.ToMilliseconds(), V1.SourceKind.Given);
            }

            cancellation.ThrowIfCancellationRequested();
            var holding = HoldingWriter.Compute(food, cancellation, ref none);
            context.NoteHolding(food, holding, budget.FoodPaths!);
            return new(holding.Window?.Span.Pessimistic.ToMilliseconds(), holding.Window?.SourceKind ?? V1.SourceKind.Unspecified);
        }).ToArray())]);
    }

    /// <summary>Puts the day together from groups of its shots.</summary>
    /// <param name="groups">The groups; shots and plates in none are left out.</param>
    /// <param name="positions">The place of each group, or none.</param>
    /// <param name="looks">How long the looks last.</param>
    /// <param name="hours">New hours of some shots.</param>
    public DayRead Arrange(
        ShotGroups groups, IReadOnlyList<int?> positions, DayLooks looks, IReadOnlyDictionary<int, IReadOnlyList<OpenTime>>? hours = null)
    {
        var times = new Dictionary<Operation, ThreePoint>();
        var odds = new Dictionary<Operation, ShotOdds>();
        var plateReads = new PlateRead?[Plates.Count];
        var places = Enumerable.Repeat(ShotPlace.None, Shots.Count).ToArray();
        List<Block> blocks = [];
        for (var b = 0; b < groups.Shots.Count; b++)
        {
            var (own, plates) = (groups.Shots[b], groups.Plates[b]);
            for (var k = 0; k < own.Length; k++)
            {
                places[own[k]] = new(b, k);
                AddUncertain(places[own[k]], Shots[own[k]], times, odds);
            }

            for (var p = 0; p < plates.Length; p++)
            {
                var plate = plates[p];
                var read = plateReads[plate] = new(b, p, [.. Plates[plate].Budgets.Select((budget, i) => Place(budget, looks.Plates[plate][i], plate, groups, own)).OfType<BudgetPlace>()]);
                for (var i = 0; i < Plates[plate].Times.Count; i++)
                {
                    Add(times, read.Stage(i), Plates[plate].Times[i]);
                }
            }

            blocks.Add(new()
            {
                Id = Asked.Shots[own[0]].Name,
                Plates = [.. plates.Select(plate => MakePlate(plate, plateReads[plate]!))],
                Shots = [.. own.Select(shot => MakeShot(shot, groups.PlatesOf[shot], plates, hours))],
                Position = positions[b],
            });
        }

        return new()
        {
            Asked = Asked,
            Day = new() { Resources = Crew.Resources, Set = Crew.Set, Blocks = blocks, Setups = Changes.Times },
            Plates = plateReads,
            Shots = places,
            Uncertainty = new() { Times = times, Odds = odds, SetupFactor = Changes.Factor },
        };
    }

    private static void AddUncertain(ShotPlace place, DayShotRead shot, Dictionary<Operation, ThreePoint> times, Dictionary<Operation, ShotOdds> odds)
    {
        Add(times, place.Shoot, shot.Shooting);
        if (shot.Approval is { } approval)
        {
            Add(times, place.Approve, approval);
        }

        if (shot.Odds is { } known)
        {
            odds.Add(place.Shoot, known);
        }
    }

    // What is certain takes the time of the plan.
    private static void Add(Dictionary<Operation, ThreePoint> times, Operation operation, ThreePoint time)
    {
        if (time.Longest > time.Likely || time.Shortest < time.Likely)
        {
            times.Add(operation, time);
        }
    }

    // A budget whose last shot is in no group any more binds nothing.
    private BudgetPlace? Place(PlateBudgetRead budget, DayLook look, int plate, ShotGroups groups, int[] group)
    {
        var shot = LastShot(budget.Asked, plate, groups, ShotOf) is { } last ? Array.IndexOf(group, last) : -1;
        if (shot < 0)
        {
            return null;
        }

        var until = budget.Asked.NeededFor is { } needed ? Moment.AfterStart(shot, needed.ToMilliseconds()) : Moment.End(shot);
        return new(budget.Asked, budget.Event, until, look.LimitMs is { } ms ? new(budget.Asked.Component, budget.Event, until, ms) : null, look.Kind);
    }

    private Plate MakePlate(int plate, PlateRead read) => new()
    {
        Id = Asked.Plates[plate].Name,
        Stages = Plates[plate].Stages,
        Budgets = [.. read.Budgets.Select(budget => budget.Budget).OfType<Budget>()],
        NotBeforeMs = Asked.Plates[plate].NotBefore?.ToMilliseconds() ?? 0,
    };

    private Shot MakeShot(int shot, int[] own, int[] plates, IReadOnlyDictionary<int, IReadOnlyList<OpenTime>>? hours) => new()
    {
        Id = Asked.Shots[shot].Name,
        ShootMs = Asked.Shots[shot].Shooting.Likely.ToMilliseconds(),
        ApproveMs = Asked.Shots[shot].Approval?.Likely.ToMilliseconds() ?? 0,
        ApprovalHoldsSet = Asked.Shots[shot].ApprovalHoldsSet,
        Setup = Changes.Setups[shot],
        SetupBeforePlate = !Asked.Shots[shot].HasSetupBeforePlate || Asked.Shots[shot].SetupBeforePlate,
        Open = hours?.GetValueOrDefault(shot) ?? Shots[shot].Open,
        Plates = [.. own.Select(plate => Array.IndexOf(plates, plate))],
    };
}

/// <summary>How long the components of each plate last, in the order of the request.</summary>
internal sealed record DayLooks(IReadOnlyList<DayLook[]> Plates);

/// <summary>How long a component lasts; no limit where its look does not end. [ms]</summary>
internal readonly record struct DayLook(long? LimitMs, V1.SourceKind Kind);

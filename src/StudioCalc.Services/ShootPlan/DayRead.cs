using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A day as read: what is planned, what of it is not certain, and where everything of the request stands in it.</summary>
internal sealed record DayRead
{
    /// <summary>The day of the request.</summary>
    public required V1.ShootDay Asked { get; init; }

    /// <summary>The same for planning. Resources: the stations in their order, stylists, runners if there are any, the set.</summary>
    public required Planning.ShootDay Day { get; init; }

    /// <summary>The plates of the request; those that are not timed have no place.</summary>
    public required IReadOnlyList<PlateRead?> Plates { get; init; }

    /// <summary>The shots of the request.</summary>
    public required IReadOnlyList<ShotPlace> Shots { get; init; }

    /// <summary>Times and tries that are not certain: not the number of plates that may be made.</summary>
    public required DayUncertainty Uncertainty { get; init; }

    /// <summary>The index of the stylists among the resources; all before are stations.</summary>
    public int Stylist => Asked.Crew?.Stations.Count ?? 0;

    /// <summary>Names of the attributes of the set, as they are numbered in setups.</summary>
    public IEnumerable<string> Attributes => Asked.Changes?.Attributes.Select(attribute => attribute.Name) ?? [];

    /// <summary>The plate at a place.</summary>
    public (DayPlate Asked, PlateRead Read) PlateAt(int block, int plate)
    {
        for (var i = 0; i < Plates.Count; i++)
        {
            if (Plates[i] is { } read && read.Block == block && read.Plate == plate)
            {
                return (Asked.Plates[i], read);
            }
        }

        throw new ArgumentOutOfRangeException(nameof(plate));
    }

    /// <summary>The shot at a place.</summary>
    public DayShot ShotAt(int block, int shot)
    {
        for (var i = 0; i < Shots.Count; i++)
        {
            if (Shots[i].Block == block && Shots[i].Shot == shot)
            {
                return Asked.Shots[i];
            }
        }

        throw new ArgumentOutOfRangeException(nameof(shot));
    }
}

/// <summary>Where a plate stands in planning, with its budgets in the order of the request.</summary>
internal sealed record PlateRead(int Block, int Plate, IReadOnlyList<BudgetPlace> Budgets)
{
    public Operation Stage(int stage) => Operation.Stage(Block, Plate, stage);
}

/// <summary>A budget of the request; without one in planning where its look does not end.</summary>
internal sealed record BudgetPlace(PlateBudget Asked, Moment Event, Moment LastFrame, Budget? Budget, V1.SourceKind Kind);

/// <summary>Where a shot stands in planning.</summary>
internal readonly record struct ShotPlace(int Block, int Shot)
{
    /// <summary>Of a shot that is not in the day.</summary>
    public static ShotPlace None => new(-1, 0);

    public Operation Setup => Operation.Setup(Block, Shot);

    public Operation Shoot => Operation.Shoot(Block, Shot);

    public Operation Approve => Operation.Approve(Block, Shot);
}

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What may be moved so that everything shows.</summary>
public sealed record MoveSearch
{
    /// <summary>What stands on the table.</summary>
    public required ViewScene Scene { get; init; }

    /// <summary>The camera.</summary>
    public required ViewGeometry Camera { get; init; }

    /// <summary>How much each component matters; those of 0 need not show.</summary>
    public required IReadOnlyList<double> Importances { get; init; }

    /// <summary>Which components may not be moved.</summary>
    public required IReadOnlyList<bool> IsFixed { get; init; }

    /// <summary>Share of each component that must show.</summary>
    public required double LeastShare { get; init; }

    /// <summary>How far a component may be moved, positive. [mm]</summary>
    public required double LongestMm { get; init; }
}

/// <summary>A move of one component.</summary>
/// <param name="Component">Which one.</param>
/// <param name="RightMm">To the right. [mm]</param>
/// <param name="AwayMm">Away from the front. [mm]</param>
/// <param name="Least">The component that shows least afterwards.</param>
/// <param name="LeastShare">Share of it that shows.</param>
public sealed record MoveFound(int Component, double RightMm, double AwayMm, int Least, double LeastShare)
{
    /// <summary>How far in all. (49) [mm]</summary>
    public double DistanceMm
    {
        get
        {
            var none = default(NoTrail);
            return Distance("", ref none);
        }
    }

    /// <summary>The same, and follows the sum.</summary>
    /// <param name="field">The answer message that holds the move, with a point at its end.</param>
    /// <param name="trail">Follows the sum.</param>
    public double Distance<TTrail>(string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var x = trail.Given("x", RightMm, "mm", "to the right", field + "right_mm");
        var y = trail.Given("y", AwayMm, "mm", "away from the front", field + "away_mm");
        return trail.Let("d", Sqrt(x * x + y * y), "mm", "plate view (49)", field + "distance_mm");
    }
}

/// <summary>What comes of a search for moves.</summary>
/// <param name="Moves">The shortest move of each component that has one, shortest first.</param>
/// <param name="Nearest">Without any, the move after which most shows of what shows least; null where none makes it better.</param>
/// <param name="Least">The component that shows least: after the nearest move, or as things stand.</param>
/// <param name="LeastShare">Share of it that shows.</param>
/// <param name="NothingToMove">Whether everything shows already.</param>
public sealed record MovesFound(
    IReadOnlyList<MoveFound> Moves, MoveFound? Nearest, int Least, double LeastShare, bool NothingToMove);

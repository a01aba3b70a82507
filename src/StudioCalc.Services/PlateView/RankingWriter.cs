using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes ranked views.</summary>
internal static class RankingWriter
{
    public static RankedView View(RankingRead read, ViewFound found)
    {
        var (search, place, parts) = (read.Search, found.Place, found.Parts);
        var camera = search.Camera.From(place.AzimuthDeg, place.ElevationDeg);
        var view = new RankedView
        {
            ElevationDeg = place.ElevationDeg,
            AzimuthDeg = place.AzimuthDeg,
            PlateTurnDeg = place.TurnDeg,
            Score = found.Score.Total,
            LeastVisible = read.Scene.Names[parts.Least],
            LeastVisibleShare = parts.LeastShare,
            AxisDepthMm = parts.DepthMm,
        };
        if (camera.DistanceMm is not null)
        {
            view.CameraHeightMm = camera.Eye.Z;
        }

        if (double.IsFinite(parts.SharpMm))
        {
            view.SharpDepthMm = parts.SharpMm;
        }

        view.Reasons.Add(Reasons(read, found.Score));
        return view;
    }

    public static ViewNotReached NotReached(RankingRead read, ViewRanked ranked, CancellationToken cancellation)
    {
        if (ranked.Nearest is not { } nearest)
        {
            return new()
            {
                Obstacle = ranked.Map.All(mark => mark.Reach == ViewReach.WrongHeight) ? ViewObstacle.CameraHeight : ViewObstacle.CameraTooClose,
            };
        }

        var search = read.Search;
        var answer = new ViewNotReached
        {
            Obstacle = ViewObstacle.ComponentHidden,
            Nearest = View(read, nearest),
            ShortfallShare = search.LeastShare - nearest.Parts.LeastShare,
        };
        var moves = ViewMoves.Find(
            new()
            {
                Scene = search.Turned(nearest.Place.TurnDeg),
                Camera = search.Camera.From(nearest.Place.AzimuthDeg, nearest.Place.ElevationDeg),
                Importances = search.Importances,
                IsFixed = [.. search.Stays.Take(search.Scene.Solids.Count)],
                LeastShare = search.LeastShare,
                LongestMm = DefaultLongestMoveMm,
            },
            cancellation);
        if (moves.Moves.Count > 0)
        {
            answer.Move = Move(read.Scene, moves.Moves[0]);
        }

        return answer;
    }

    /// <summary>How far a component is moved where a request does not tell. [mm]</summary>
    public const double DefaultLongestMoveMm = 150;

    public static ComponentMove Move(SceneRead scene, MoveFound move) => new()
    {
        Name = scene.Names[move.Component],
        RightMm = move.RightMm,
        AwayMm = move.AwayMm,
        DistanceMm = move.DistanceMm,
        LeastVisibleShare = move.LeastShare,
    };

    public static IEnumerable<ViewScoreRow> Map(ViewSearch search, IReadOnlyList<ViewMark> map)
    {
        var azimuths = search.AzimuthsDeg.Count;
        for (var start = 0; start < map.Count; start += azimuths)
        {
            var place = search.At(start);
            var row = new ViewScoreRow { PlateTurnDeg = place.TurnDeg, ElevationDeg = place.ElevationDeg };
            row.AzimuthsDeg.Add(search.AzimuthsDeg);
            var marks = Enumerable.Range(start, azimuths).Select(view => map[view]).ToList();
            row.Scores.Add(marks.Select(mark => mark.Reach == ViewReach.Within ? mark.Score : -1));
            row.LeastVisibleShares.Add(marks.Select(mark => mark.LeastShare));
            yield return row;
        }
    }

    private static IEnumerable<ViewReason> Reasons(RankingRead read, ViewScore score)
    {
        var weights = read.Search.Weights;
        yield return Reason(ViewReasonKind.MainInFront, score.MainInFront, weights.MainInFront);
        yield return Reason(ViewReasonKind.MainLarge, score.MainLarge, weights.MainLarge);
        yield return Reason(ViewReasonKind.ComponentsShow, score.ComponentsShow, weights.ComponentsShow);
        if (weights.InsidesOpen > 0)
        {
            yield return Reason(ViewReasonKind.InsidesOpen, score.InsidesOpen, weights.InsidesOpen);
        }

        if (read.HasSharpness)
        {
            yield return Reason(ViewReasonKind.DepthFits, score.DepthFits, weights.DepthFits);
        }
    }

    private static ViewReason Reason(ViewReasonKind kind, double share, double weight) => new() { Kind = kind, PartShare = share, Weight = weight };
}

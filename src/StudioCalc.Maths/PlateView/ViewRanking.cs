namespace StudioCalc.Maths;

/// <summary>Looks at many views of a dish and finds the best few that differ.</summary>
/// <remarks>Every view is counted over a coarse grid of sight lines. Those whose least share may reach the wanted one, within its
/// uncertainty (14), are taken by score; each is counted again over a fine grid, which decides whether it shows everything.
/// After <see cref="MostChecked"/> that do not, no more are tried. Of equal scores the one with the lesser turn of the plate comes
/// first, and then the earlier one.</remarks>
public static class ViewRanking
{
    /// <summary>Sight lines along the longer side of each thing while searching.</summary>
    public const int SearchLines = 16;

    /// <summary>Sight lines for the views that are told.</summary>
    public const int ToldLines = 48;

    /// <summary>How many views may turn out to hide too much before no more are tried.</summary>
    public const int MostChecked = 60;

    private const int NearestChecked = 8;

    /// <summary>Searches.</summary>
    /// <param name="search">What is looked at.</param>
    /// <param name="cancellation">Looked at once a view.</param>
    public static ViewRanked Find(ViewSearch search, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(search);
        var map = new ViewMark[search.Views];
        Look(search, map, cancellation);
        var chosen = Choose(search, map, cancellation);
        if (chosen.Count > 0)
        {
            return new(map, chosen, null);
        }

        if (Nearest(search, map, cancellation) is not { } nearest)
        {
            return new(map, [], null);
        }

        return nearest.Parts.LeastShare >= search.LeastShare ? new(map, [nearest], null) : new(map, [], nearest);
    }

    /// <summary>Counts one view over a grid.</summary>
    /// <param name="search">What is looked at.</param>
    /// <param name="place">The view.</param>
    /// <param name="lines">Sight lines along the longer side of each thing.</param>
    public static ViewParts Evaluate(ViewSearch search, ViewPlace place, int lines)
    {
        ArgumentNullException.ThrowIfNull(search);
        var scene = search.Turned(place.TurnDeg);
        var camera = search.Camera.From(place.AzimuthDeg, place.ElevationDeg);
        return Measure(search, scene, new(scene, camera, lines), camera);
    }

    private static void Look(ViewSearch search, ViewMark[] map, CancellationToken cancellation)
    {
        var view = 0;
        foreach (var turn in search.TurnsDeg)
        {
            var scene = search.Turned(turn);
            var sight = new SceneView(scene, search.Camera, SearchLines);
            foreach (var elevation in search.ElevationsDeg)
            {
                foreach (var azimuth in search.AzimuthsDeg)
                {
                    cancellation.ThrowIfCancellationRequested();
                    map[view++] = Mark(search, scene, sight, search.Camera.From(azimuth, elevation));
                }
            }
        }
    }

    private static ViewMark Mark(ViewSearch search, ViewScene scene, SceneView sight, ViewGeometry camera)
    {
        if (!search.KeepsHeights(camera))
        {
            return new(ViewReach.WrongHeight, 0, 0, 0);
        }

        for (var i = 0; i < scene.Count; i++)
        {
            if (!scene.LiesBefore(i, camera))
            {
                return new(ViewReach.TooClose, 0, 0, 0);
            }
        }

        sight.Look(camera);
        var parts = Measure(search, scene, sight, camera);
        return new(ViewReach.Within, parts.Score(search.Weights).Total, parts.LeastShare, parts.HighShare);
    }

    private static ViewParts Measure(ViewSearch search, ViewScene scene, SceneView sight, ViewGeometry camera)
    {
        var (near, far) = (double.PositiveInfinity, double.NegativeInfinity);
        var (main, other) = (0.0, 0.0);
        var (shown, toShow) = (0.0, 0.0);
        var (least, leastShare, highShare) = (-1, 2.0, 2.0);
        var (most, outside) = (search.Main, 0.0);
        for (var i = 0; i < scene.Solids.Count; i++)
        {
            var depths = sight.Depths(i);
            (near, far) = (Math.Min(near, depths.NearestMm), Math.Max(far, depths.FarthestMm));
            var outline = sight.Outline(i, default);
            var share = outline.Share;
            shown += search.Importances[i] * share;
            toShow += search.Importances[i];
            (main, other) = i == search.Main ? (outline.InFrameMm2, other) : (main, Math.Max(other, outline.InFrameMm2));
            if (search.Importances[i] > 0)
            {
                (least, leastShare) = share < leastShare ? (i, share) : (least, leastShare);
                highShare = Math.Min(highShare, share + outline.Uncertainty);
                (most, outside) = outline.OutsideShare > outside ? (i, outline.OutsideShare) : (most, outside);
            }
        }

        return new()
        {
            NearestMm = near,
            FarthestMm = far,
            MainNearestMm = sight.Depths(search.Main).NearestMm,
            MainMm2 = main,
            OtherMm2 = scene.Solids.Count > 1 ? other : null,
            Shown = shown,
            ToShow = toShow,
            Open = search.Weights.InsidesOpen > 0 ? MeanOpen(scene, camera) : 0,
            SharpMm = search.SharpMm,
            LeastShare = leastShare,
            Least = least,
            HighShare = highShare,
            MostOutside = most,
            OutsideShare = outside,
        };
    }

    private static double MeanOpen(ViewScene scene, ViewGeometry camera)
    {
        var sum = 0.0;
        foreach (var vessel in scene.Vessels)
        {
            sum += ContentView.Share(vessel, camera);
        }

        return sum / scene.Vessels.Count;
    }

    private static List<ViewFound> Choose(ViewSearch search, ViewMark[] map, CancellationToken cancellation)
    {
        var chosen = new List<ViewFound>(search.Count);
        var missed = 0;
        foreach (var view in InOrder(search, map, mark => mark.HighShare >= search.LeastShare, mark => mark.Score))
        {
            var place = search.At(view);
            if (chosen.Exists(other => other.Place.AngleTo(place) < search.LeastDifferenceDeg))
            {
                continue;
            }

            cancellation.ThrowIfCancellationRequested();
            var parts = Evaluate(search, place, ToldLines);
            if (parts.LeastShare >= search.LeastShare)
            {
                chosen.Add(new(place, parts, parts.Score(search.Weights)));
            }
            else
            {
                missed++;
            }

            if (chosen.Count == search.Count || missed == MostChecked)
            {
                break;
            }
        }

        return [.. chosen.OrderByDescending(found => found.Score.Total)];
    }

    private static ViewFound? Nearest(ViewSearch search, ViewMark[] map, CancellationToken cancellation)
    {
        ViewFound? nearest = null;
        foreach (var view in InOrder(search, map, _ => true, mark => mark.LeastShare + 1e-3 * mark.Score).Take(NearestChecked))
        {
            cancellation.ThrowIfCancellationRequested();
            var parts = Evaluate(search, search.At(view), ToldLines);
            if (nearest is null || parts.LeastShare > nearest.Parts.LeastShare)
            {
                nearest = new(search.At(view), parts, parts.Score(search.Weights));
            }
        }

        return nearest;
    }

    private static IEnumerable<int> InOrder(
        ViewSearch search, ViewMark[] map, Func<ViewMark, bool> counts, Func<ViewMark, double> worth) => Enumerable.Range(0, map.Length)
            .Where(view => map[view].Reach == ViewReach.Within && counts(map[view]))
            .OrderByDescending(view => worth(map[view]))
            .ThenBy(view => Math.Abs(search.At(view).TurnDeg));
}

/// <summary>Whether a camera can stand somewhere.</summary>
public enum ViewReach
{
    /// <summary>It can.</summary>
    Within,

    /// <summary>It would be too low or too high.</summary>
    WrongHeight,

    /// <summary>Something would stand beside or behind its entrance pupil.</summary>
    TooClose,
}

/// <summary>What the search found of a view.</summary>
/// <param name="Reach">Whether the camera can stand there; the rest is 0 where it cannot.</param>
/// <param name="Score">Its score, from 0 to 1.</param>
/// <param name="LeastShare">The least share that shows of any component that must.</param>
/// <param name="HighShare">That share at the upper end of its uncertainty.</param>
public readonly record struct ViewMark(ViewReach Reach, double Score, double LeastShare, double HighShare);

/// <summary>A view that is told.</summary>
/// <param name="Place">Which view.</param>
/// <param name="Parts">What was measured, over the fine grid.</param>
/// <param name="Score">Its score.</param>
public sealed record ViewFound(ViewPlace Place, ViewParts Parts, ViewScore Score);

/// <summary>What comes of a search.</summary>
/// <param name="Map">All views, by turn, elevation and azimuth.</param>
/// <param name="Best">The best few that show everything, best first.</param>
/// <param name="Nearest">Where none does, the one that hides least; null where the camera can stand nowhere.</param>
public sealed record ViewRanked(IReadOnlyList<ViewMark> Map, IReadOnlyList<ViewFound> Best, ViewFound? Nearest);

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Which component to move, and how far, so that everything shows.</summary>
/// <remarks>Moves are tried in <see cref="Directions"/> directions and <see cref="Rings"/> distances, in whole millimetres, over a coarse
/// grid of sight lines. The shortest that shows everything is then shortened, and turned by ever smaller angles, over the fine
/// grid, which decides. Only what shows least itself, and what hides part of it, is tried: no other move can help.</remarks>
public static class ViewMoves
{
    /// <summary>Directions that are tried.</summary>
    public const int Directions = 24;

    /// <summary>Distances that are tried in each.</summary>
    public const int Rings = 24;

    private const int SearchLines = 24;
    private const int ToldLines = ViewRanking.ToldLines;

    /// <summary>Searches.</summary>
    /// <param name="search">What may be moved.</param>
    /// <param name="cancellation">Looked at once a try.</param>
    /// <returns>The shortest move of each component that has one.</returns>
    public static MovesFound Find(MoveSearch search, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(search);
        var scene = search.Scene;
        var sight = new SceneView(scene, search.Camera, ToldLines);
        double[] shares = [.. Enumerable.Range(0, scene.Solids.Count).Select(i => sight.Outline(i, default).Share)];
        int[] must = [.. Enumerable.Range(0, shares.Length).Where(i => search.Importances[i] > 0)];
        int[] unseen = [.. must.Where(i => shares[i] < search.LeastShare).OrderBy(i => shares[i])];
        if (unseen.Length == 0)
        {
            return new([], null, must.Length == 0 ? 0 : must.MinBy(i => shares[i]), must.Length == 0 ? 1 : must.Min(i => shares[i]), true);
        }

        var hidden = new int[scene.Count];
        sight.Outline(unseen[0], hidden);
        var moves = new List<MoveFound>();
        MoveFound? nearest = null;
        var least = shares[unseen[0]];
        for (var i = 0; i < shares.Length; i++)
        {
            if (search.IsFixed[i] || (i != unseen[0] && hidden[i] == 0) || MoveRoom.Of(scene, i) is not { } room)
            {
                continue;
            }

            var tries = new MovesOfOne(search, room, i, [.. unseen, .. must.Except(unseen)], least, cancellation);
            if (tries.Shortest() is { } shortest)
            {
                moves.Add(shortest);
            }
            else if (tries.Best() is { } best && best.LeastShare > Max(least, nearest?.LeastShare ?? 0))
            {
                nearest = best;
            }
        }

        return new(
            [.. moves.OrderBy(move => move.DistanceMm).ThenBy(move => move.Component)],
            moves.Count > 0 ? null : nearest,
            nearest?.Least ?? unseen[0],
            nearest?.LeastShare ?? least,
            false);
    }

    /// <summary>Whether a component can be moved at all: it stands on the table or in a vessel, and carries no other.</summary>
    /// <param name="scene">What stands on the table.</param>
    /// <param name="solid">Its place among the components.</param>
    public static bool CanMove(ViewScene scene, int solid)
    {
        ArgumentNullException.ThrowIfNull(scene);
        return MoveRoom.Of(scene, solid) is not null;
    }

    /// <summary>How much more would have to show of what shows least. (48)</summary>
    /// <param name="search">What was searched.</param>
    /// <param name="found">What came of it.</param>
    /// <param name="field">The answer field that holds it.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double Shortfall<TTrail>(MoveSearch search, MovesFound found, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(found);
        var wanted = trail.Given("wanted", search.LeastShare, "", "least_visible_share");
        var least = trail.Given("least", found.LeastShare, "", "share that shows of what shows least, counted");
        return trail.Let("short", wanted - least, "", "plate view (48)", field);
    }

    private sealed class MovesOfOne(
        MoveSearch search, MoveRoom room, int solid, int[] must, double least, CancellationToken cancellation)
    {
        private readonly List<MoveFound> _partial = [];
        private double _floor = least;

        // The shortest move that shows everything; fills the list of those that show most.
        public MoveFound? Shortest()
        {
            var ring = search.LongestMm / Rings;
            MoveFound? found = null;
            for (var r = 1; r <= Rings && found is null; r++)
            {
                for (var d = 0; d < Directions; d++)
                {
                    var azimuth = 360.0 * d / Directions;
                    var move = At(azimuth, r * ring);
                    if (Try(move, SearchLines, _floor) is not { } tried)
                    {
                        continue;
                    }

                    if (tried.LeastShare < search.LeastShare)
                    {
                        _partial.Add(tried);
                        _floor = tried.LeastShare;
                    }
                    else if (Shorten(azimuth, (r - 1) * ring, r * ring) is not { } shorter)
                    {
                        _partial.Add(tried);
                    }
                    else if (found is null || shorter.DistanceMm < found.DistanceMm)
                    {
                        found = Turned(azimuth, shorter, (r - 1) * ring);
                    }
                }
            }

            return found;
        }

        public MoveFound? Best() => _partial
            .OrderByDescending(move => move.LeastShare).ThenBy(move => move.DistanceMm).Take(3)
            .Select(move => Try((move.RightMm, move.AwayMm), ToldLines, 0))
            .Where(move => move is not null)
            .MaxBy(move => move!.LeastShare);

        private MoveFound Turned(double azimuth, MoveFound found, double from)
        {
            for (var step = 180.0 / Directions; step > 1; step /= 2)
            {
                foreach (var other in (double[])[azimuth - step, azimuth + step])
                {
                    if (Shorten(other, from, found.DistanceMm) is { } shorter && shorter.DistanceMm < found.DistanceMm)
                    {
                        (found, azimuth) = (shorter, other);
                    }
                }
            }

            return found;
        }

        // The shortest move in a direction, by halving; null where the longer one does not show everything.
        private MoveFound? Shorten(double azimuth, double low, double high)
        {
            if (Reached(azimuth, high) is not { } found)
            {
                return null;
            }

            while (high - low > 0.5)
            {
                var middle = (low + high) / 2;
                if (Reached(azimuth, middle) is { } shorter)
                {
                    (found, high) = (shorter, middle);
                }
                else
                {
                    low = middle;
                }
            }

            return found;
        }

        private MoveFound? Reached(double azimuth, double distance) =>
            Try(At(azimuth, distance), ToldLines, search.LeastShare) is { } tried && tried.LeastShare >= search.LeastShare ? tried : null;

        private static (double Right, double Away) At(double azimuthDeg, double distanceMm)
        {
            var (sin, cos) = SinCos(azimuthDeg * PI / 180);
            return (Round(distanceMm * sin), Round(-distanceMm * cos));
        }

        // Null where it may not stand, or where something shows too little, and no more than the floor.
        private MoveFound? Try((double Right, double Away) move, int lines, double floor)
        {
            cancellation.ThrowIfCancellationRequested();
            var own = search.Scene.Solids[solid];
            var there = own.At(own.Base + new Vector(move.Right, move.Away, 0), own.TurnDeg);
            if (move == (0, 0) || move.Right * move.Right + move.Away * move.Away > search.LongestMm * search.LongestMm || !room.Holds(there))
            {
                return null;
            }

            var scene = search.Scene.With(solid, there);
            if (!scene.LiesBefore(solid, search.Camera))
            {
                return null;
            }

            var sight = new SceneView(scene, search.Camera, lines);
            var (lowest, share) = (must[0], double.PositiveInfinity);
            foreach (var i in must)
            {
                var shows = sight.Outline(i, default).Share;
                if (shows < search.LeastShare && shows <= floor)
                {
                    return null;
                }

                (lowest, share) = shows < share ? (i, shows) : (lowest, share);
            }

            return new(solid, move.Right, move.Away, lowest, share);
        }
    }
}

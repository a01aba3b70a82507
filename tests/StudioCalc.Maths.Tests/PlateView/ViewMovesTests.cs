using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ViewMovesTests
{
    private static readonly ViewSolid Tower = new(SolidKind.ConeFrustum, new(0, -40, 0), 0, 50, 50, 90);
    private static readonly ViewSolid Dip = new(SolidKind.Heap, new(0, 30, 0), 0, 50, 50, 15);

    [Fact]
    public void Dip_BehindATower_IsMovedOutOrTheTowerIs()
    {
        var found = ViewMoves.Find(Search([Tower, Dip]), CancellationToken.None);
        Assert.Equal([0, 1], found.Moves.Select(move => move.Component).Order());
        Assert.All(found.Moves, move => Assert.True(After(Search([Tower, Dip]), move) >= 0.5));

        // Half of the dip must come out sideways behind a tower as wide as itself.
        Assert.All(found.Moves, move => Assert.InRange(move.DistanceMm, 15, 35));
        Assert.Equal(found.Moves.OrderBy(move => move.DistanceMm), found.Moves);
    }

    [Fact]
    public void Everything_ThatShows_NeedsNoMove()
    {
        var found = ViewMoves.Find(Search([Tower, Dip]) with { Camera = new(default, 90, 20, 700, 400, 300) }, CancellationToken.None);
        Assert.True(found.NothingToMove);
        Assert.Empty(found.Moves);
    }

    [Fact]
    public void Fixed_AreNotMoved()
    {
        var search = Search([Tower, Dip]);
        Assert.Equal([1], ViewMoves.Find(search with { IsFixed = [true, false] }, CancellationToken.None).Moves.Select(move => move.Component));
        var none = ViewMoves.Find(search with { IsFixed = [true, true] }, CancellationToken.None);
        Assert.Empty(none.Moves);
        Assert.Null(none.Nearest);
        Assert.Equal(1, none.Least);
    }

    [Fact]
    public void Short_OfAMoveThatShowsAll_TheNearestShowsMore()
    {
        var search = Search([Tower, Dip]) with { LongestMm = 10 };
        var found = ViewMoves.Find(search, CancellationToken.None);
        Assert.Empty(found.Moves);
        Assert.NotNull(found.Nearest);
        Assert.True(found.Nearest.DistanceMm <= 10);
        Assert.Equal(found.LeastShare, After(search, found.Nearest));
        Assert.InRange(found.LeastShare, Least(search) + 0.01, 0.5);
    }

    [Fact]
    public void Importance_OfNothing_NeedNotShow() =>
        Assert.True(ViewMoves.Find(Search([Tower, Dip]) with { Importances = [1, 0] }, CancellationToken.None).NothingToMove);

    // A plate of 200 with a floor of 160: the dip, 50 wide, has its middle within 55 of the plate's.
    [Fact]
    public void Move_InAVessel_StaysWithinIt()
    {
        var plate = new ViewVessel(
            new() { RimWidthMm = 200, RimDepthMm = 200, RimHeightMm = 15, FloorShare = 0.8, FloorHeightMm = 5, ContentHeightMm = 5 }, default, 0);
        ViewSolid[] solids = [Tower.At(new(0, -30, 5), 0), Dip.At(new(0, 30, 5), 0)];
        var search = Search(solids) with { Scene = new(solids, [plate]), IsFixed = [true, false] };
        var found = ViewMoves.Find(search, CancellationToken.None);
        var move = Assert.Single(found.Moves);
        Assert.True(new Vector(move.RightMm, 30 + move.AwayMm, 0).Length <= 55 + 1e-6);
        Assert.True(After(search, move) >= 0.5);
    }

    [Fact]
    public void Move_RunsIntoNothing() => Gen.Select(Gen.Double[-60, 60], Gen.Double[-60, 60], Gen.Double[10, 40]).Sample(
        (x, y, size) =>
        {
            var third = new ViewSolid(SolidKind.ConeFrustum, new(x, y, 0), 0, size, size, 30);
            ViewSolid[] solids = [Tower, Dip, third];
            var search = Search(solids) with { LeastShare = 0.4 };
            foreach (var move in ViewMoves.Find(search, CancellationToken.None).Moves)
            {
                var place = solids[move.Component].Base + new Vector(move.RightMm, move.AwayMm, 0);
                for (var i = 0; i < solids.Length; i++)
                {
                    var touching = (solids[move.Component].WidthMm + solids[i].WidthMm) / 2;
                    var metBefore = (solids[move.Component].Base - solids[i].Base).Length < touching / Math.Cos(Math.PI / 72);
                    Assert.True(i == move.Component || metBefore || (place - solids[i].Base).Length >= touching - 1e-6);
                }

                Assert.True(After(search, move) >= 0.4);
            }
        },
        iter: 30);

    [Fact]
    public void Resting_OnAnother_IsNotMoved_NorWhatCarriesIt()
    {
        var garnish = new ViewSolid(SolidKind.Ellipsoid, new(0, -40, 90), 0, 20, 20, 10);
        var scene = new ViewScene([Tower, Dip, garnish], []);
        Assert.False(ViewMoves.CanMove(scene, 0));
        Assert.True(ViewMoves.CanMove(scene, 1));
        Assert.False(ViewMoves.CanMove(scene, 2));
    }

    [Fact]
    public void SceneAndCamera_TurnedTogether_ByARightAngle_MoveAlike()
    {
        var search = Search([Tower, Dip]);
        var turned = search with { Scene = search.Scene.Turned(90, [false, false]), Camera = search.Camera.From(90, 20) };
        var (one, other) = (ViewMoves.Find(search, CancellationToken.None), ViewMoves.Find(turned, CancellationToken.None));
        Assert.Equal(one.Moves.Count, other.Moves.Count);
        Assert.Equal(one.Moves[0].DistanceMm, other.Moves[0].DistanceMm, 2.0);
    }

    private static double Least(MoveSearch search) => LeastOf(search, search.Scene);

    private static double After(MoveSearch search, MoveFound move)
    {
        var own = search.Scene.Solids[move.Component];
        return LeastOf(search, search.Scene.With(move.Component, own.At(own.Base + new Vector(move.RightMm, move.AwayMm, 0), own.TurnDeg)));
    }

    private static double LeastOf(MoveSearch search, ViewScene scene)
    {
        var view = new SceneView(scene, search.Camera, ViewRanking.ToldLines);
        return Enumerable.Range(0, scene.Solids.Count).Min(i => view.Outline(i, default).Share);
    }

    private static MoveSearch Search(ViewSolid[] solids) => new()
    {
        Scene = new(solids, []),
        Camera = new(default, 0, 20, 700, 400, 300),
        Importances = [.. solids.Select(_ => 1.0)],
        IsFixed = [.. solids.Select(_ => false)],
        LeastShare = 0.5,
        LongestMm = 150,
    };
}

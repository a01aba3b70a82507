using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ViewRankingTests
{
    private static readonly ViewWeights Even = new(1, 1, 1, 0, 0);

    private static readonly ViewVessel Bowl = new(
        new() { RimWidthMm = 160, RimDepthMm = 160, RimHeightMm = 40, ContentHeightMm = 10 }, default, 0);

    [Fact]
    public void Parts_OfOneBehindAnother_AreAsReckonedByHand()
    {
        // Far camera, level: the front box is 40 deep at y -60 to -20, the main one behind it at y 20 to 60, twice as high.
        var search = Search([Box(0, -40, 40, 20), Box(0, 40, 40, 40)], main: 1) with { SharpMm = 30 };
        var parts = ViewRanking.Evaluate(search, new(0, 0, 0), 96);
        var score = parts.Score(new(1, 1, 1, 0, 1));

        Assert.Equal(120, parts.DepthMm, 1e-9);
        Assert.Equal(1 - 80 / 120.0, score.MainInFront, 1e-9);
        Assert.Equal(1, score.MainLarge, 1e-9);
        Assert.Equal(0.75, score.ComponentsShow, 0.01);
        Assert.Equal(30 / 120.0, score.DepthFits, 1e-9);
        Assert.Equal((score.MainInFront + score.MainLarge + score.ComponentsShow + score.DepthFits) / 4, score.Total, 1e-12);
        Assert.Equal((1, 0.5), (parts.Least, Math.Round(parts.LeastShare, 2)));
    }

    // The hidden height of a box behind a wide wall is H - s tan e, of its front as seen from e.
    [Fact]
    public void Share_OfABoxBehindAWall_FollowsTheSightLine() => Gen.Select(Gen.Double[5, 40], Gen.Double[10, 60]).Sample((elevation, gap) =>
    {
        const double wall = 50, height = 40, thin = 0.1;
        var (front, back) = (new ViewSolid(SolidKind.Box, new(0, 0, 0), 0, 400, thin, wall), new ViewSolid(SolidKind.Box, new(0, gap + thin, 0), 0, 60, thin, height));
        var parts = ViewRanking.Evaluate(Search([front, back], main: 0), new(elevation, 0, 0), 256);
        var hidden = Math.Clamp(wall - gap * Math.Tan(elevation * Math.PI / 180), 0, height);
        Assert.Equal(1 - hidden / height, parts.LeastShare, 0.012);
    });

    [Fact]
    public void Insides_WeighByTheShareOverTheRim()
    {
        var search = Search([Box(0, 0, 20, 20)], main: 0, [Bowl]) with { Weights = new(0, 0, 0, 1, 0) };
        var place = new ViewPlace(40, 0, 0);
        Assert.Equal(ContentView.Share(Bowl, search.Camera.From(0, 40)), ViewRanking.Evaluate(search, place, 16).Score(search.Weights).Total, 1e-12);
    }

    [Fact]
    public void Best_OfTwoInARow_LooksFromTheSideOfTheMainOne()
    {
        var found = ViewRanking.Find(All(Search([Box(0, -40, 40, 40), Box(0, 40, 40, 40)], main: 1)), CancellationToken.None);
        Assert.True(Math.Abs(found.Best[0].Place.AzimuthDeg) >= 135);
    }

    [Fact]
    public void Views_ThatAreTold_ShowEverythingAndDiffer() => RandomScenes.Solids.List[2, 5].Sample(
        solids =>
        {
            var search = All(Search(solids, main: 0)) with { LeastShare = 0.4, LeastDifferenceDeg = 30, Count = 4 };
            var found = ViewRanking.Find(search, CancellationToken.None);
            Assert.All(found.Best, view => Assert.Equal(view.Parts, ViewRanking.Evaluate(search, view.Place, ViewRanking.ToldLines)));
            Assert.All(found.Best, view => Assert.True(view.Parts.LeastShare >= 0.4));
            foreach (var (one, other) in found.Best.SelectMany((one, i) => found.Best.Skip(i + 1).Select(other => (one, other))))
            {
                Assert.True(one.Place.AngleTo(other.Place) >= 30);
                Assert.True(one.Score.Total >= other.Score.Total);
            }

            Assert.Equal(found.Best.Count == 0, found.Nearest is not null);
        },
        iter: 20);

    [Fact]
    public void Map_OfSceneAndAzimuthsTurnedTogether_IsTheSame() => RandomScenes.Solids.List[2, 4].Sample(
        solids =>
        {
            var search = All(Search(solids, main: 0));
            var turned = search with
            {
                Scene = search.Scene.Turned(50, search.Stays),
                AzimuthsDeg = [.. search.AzimuthsDeg.Select(azimuth => azimuth + 50)],
            };
            var (one, other) = (ViewRanking.Find(search, CancellationToken.None), ViewRanking.Find(turned, CancellationToken.None));
            foreach (var (a, b) in one.Map.Zip(other.Map))
            {
                // A line on an edge may fall on either side of it.
                Assert.Equal(a.Score, b.Score, 0.02);
                Assert.Equal(a.LeastShare, b.LeastShare, 0.06);
            }
        },
        iter: 20);

    [Fact]
    public void PlateTurned_IsTheCameraTurnedBack_ButForWhatStays()
    {
        var search = Search([Box(30, -40, 40, 20), Box(-10, 40, 30, 50)], main: 0, [Bowl]);
        var (turned, around) = (ViewRanking.Evaluate(search, new(30, 20, 50), 48), ViewRanking.Evaluate(search, new(30, -30, 0), 48));
        Assert.Equal(around.Score(Even).Total, turned.Score(Even).Total, 0.01);
        Assert.Equal(0, new ViewPlace(30, 20, 50).AngleTo(new(30, -30, 0)), 1e-6);

        var stays = search with { Stays = [true, true, true] };
        Assert.Equal(ViewRanking.Evaluate(stays, new(30, 20, 0), 48), ViewRanking.Evaluate(stays, new(30, 20, 50), 48));
    }

    [Fact]
    public void Heights_OutOfReach_AreMarkedAndNeverTold()
    {
        var search = All(Search([Box(0, 0, 40, 40)], main: 0)) with
        {
            Camera = new(default, 0, 30, 500, 400, 300), HighestMm = 250, LowestMm = 120,
        };
        var found = ViewRanking.Find(search, CancellationToken.None);
        for (var i = 0; i < found.Map.Count; i++)
        {
            var height = 500 * Math.Sin(search.At(i).ElevationDeg * Math.PI / 180);
            Assert.Equal(height is >= 120 and <= 250 ? ViewReach.Within : ViewReach.WrongHeight, found.Map[i].Reach);
        }

        Assert.All(found.Best, view => Assert.InRange(view.Place.ElevationDeg, 13, 30));
        var none = ViewRanking.Find(search with { HighestMm = 50, LowestMm = 49 }, CancellationToken.None);
        Assert.Null(none.Nearest);
        Assert.Empty(none.Best);
    }

    [Fact]
    public void Camera_AmongTheThings_CannotStandThere()
    {
        var search = All(Search([Box(0, 0, 40, 40), Box(0, -100, 40, 200)], main: 0)) with { Camera = new(default, 0, 30, 110, 200, 150) };
        var found = ViewRanking.Find(search, CancellationToken.None);
        Assert.Equal(ViewReach.TooClose, found.Map[search.AzimuthsDeg.ToList().IndexOf(0)].Reach);
        Assert.Contains(found.Map, mark => mark.Reach == ViewReach.Within);
    }

    [Fact]
    public void Search_ThatIsCancelled_Stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => ViewRanking.Find(All(Search([Box(0, 0, 40, 40)], main: 0)), source.Token));
    }

    private static ViewSolid Box(double x, double y, double size, double height) => new(SolidKind.Box, new(x, y, 0), 0, size, size, height);

    private static ViewSearch All(ViewSearch search) => search with
    {
        ElevationsDeg = [.. Enumerable.Range(0, 10).Select(i => 10.0 * i)],
        AzimuthsDeg = [.. Enumerable.Range(-12, 24).Select(i => 15.0 * i)],
    };

    private static ViewSearch Search(List<ViewSolid> solids, int main, List<ViewVessel>? vessels = null) => new()
    {
        Scene = new(solids, vessels ?? []),
        Camera = new(default, 0, 30, null, 600, 400),
        Importances = [.. solids.Select(_ => 1.0)],
        Main = main,
        Stays = [.. Enumerable.Repeat(false, solids.Count + (vessels?.Count ?? 0))],
        ElevationsDeg = [30],
        AzimuthsDeg = [0],
        TurnsDeg = [0],
        Weights = Even,
        LeastShare = 0.3,
    };
}

using StudioCalc.Tests;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class RankViewsTests
{
    [Fact]
    public void Best_Evaluated_ShowsWhatTheRankingTells()
    {
        var request = Examples.Rank();
        var best = Calls.PlateView.RankViews(request).Solution.Views[0];
        var view = new EvaluateViewRequest { Scene = Turned(request.Scene, best.PlateTurnDeg), Camera = request.Camera.Clone() };
        (view.Camera.Direction.ElevationDeg, view.Camera.Direction.AzimuthDeg) = (best.ElevationDeg, best.AzimuthDeg);
        var answer = Calls.PlateView.EvaluateView(view);
        var least = answer.Components.MinBy(component => component.VisibleShare)!;
        Assert.Equal((best.LeastVisible, best.LeastVisibleShare), (least.Name, least.VisibleShare));
        Assert.Equal(best.AxisDepthMm, answer.Components.Max(one => one.FarthestDepthMm) - answer.Components.Min(one => one.NearestDepthMm), 1e-9);
        Assert.Equal(best.CameraHeightMm, answer.Camera.EntrancePupil.ZMm, 1e-9);
        var shows = best.Reasons.Single(reason => reason.Kind == ViewReasonKind.ComponentsShow).PartShare;
        var importances = request.Scene.Components.Select(component => component.HasImportance ? component.Importance : 1).ToList();
        Assert.Equal(answer.Components.Zip(importances, (one, i) => one.VisibleShare * i).Sum() / importances.Sum(), shows, 1e-12);
    }

    [Fact]
    public void Score_IsTheMeanOfItsReasonsByWeight()
    {
        foreach (var view in Calls.PlateView.RankViews(Examples.Rank()).Solution.Views)
        {
            Assert.Equal(5, view.Reasons.Count);
            Assert.Equal(view.Reasons.Sum(reason => reason.PartShare * reason.Weight) / view.Reasons.Sum(reason => reason.Weight), view.Score, 1e-12);
        }
    }

    [Fact]
    public void Depth_OfField_IsThatOfEvaluateDepthOfField()
    {
        var request = Examples.Rank();
        var zone = Calls.DepthOfField.EvaluateDepthOfField(new()
        {
            Camera = new() { Lens = request.Camera.Lens, Sensor = request.Camera.Sensor, Closeness = new() { FieldWidthMm = request.Camera.FieldWidthMm } },
            Aperture = request.Sharpness.Aperture,
            PermittedBlur = request.Sharpness.PermittedBlur,
        }).Zone;
        Assert.All(Calls.PlateView.RankViews(request).Solution.Views, view => Assert.Equal(zone.TotalDepthMm, view.SharpDepthMm, 1e-9));
    }

    [Fact]
    public void Map_HoldsARowOfAzimuthsForEachTurnAndElevation()
    {
        var request = Examples.Rank();
        request.IncludeMap = true;
        request.HighestCameraMm = 600;
        var map = Calls.PlateView.RankViews(request).Map;
        Assert.Equal(13 * 13, map.Count);
        Assert.All(map, row => Assert.Equal((7, 7, 7), (row.AzimuthsDeg.Count, row.Scores.Count, row.LeastVisibleShares.Count)));
        Assert.Contains(map, row => row.ElevationDeg == 75 && row.Scores.All(score => score == -1));
        Assert.Contains(map, row => row.Scores.All(score => score is > 0 and <= 1));
    }

    [Fact]
    public void Hidden_FromEverywhere_IsNotReached_WithTheNearestAndAMove()
    {
        var request = Examples.Rank();
        request.Scene.Components.Add(new ViewComponent
        {
            Name = "olive", Base = new() { XMm = 20, YMm = -58, ZMm = 52 }, Kind = SolidKind.Ellipsoid, WidthMm = 14, HeightMm = 12,
        });
        request.Elevations = new() { FromDeg = 2, ToDeg = 6, StepDeg = 2 };
        request.PlateTurns = null;
        request.LeastVisibleShare = 0.3;
        var answer = Calls.PlateView.RankViews(request).NotReached;
        Assert.Equal(ViewObstacle.ComponentHidden, answer.Obstacle);
        Assert.Equal(0.3 - answer.Nearest.LeastVisibleShare, answer.ShortfallShare, 1e-12);
    }

    [Fact]
    public void Heights_ThatNoViewKeeps_AreNotReached()
    {
        var request = Examples.Rank();
        (request.LowestCameraMm, request.HighestCameraMm) = (2000, 2100);
        var answer = Calls.PlateView.RankViews(request).NotReached;
        Assert.Equal(ViewObstacle.CameraHeight, answer.Obstacle);
        Assert.Null(answer.Nearest);
    }

    public static TheoryData<string, Action<RankViewsRequest>> Refusals => new()
    {
        { "elevations.to_deg", request => request.Elevations.ToDeg = 100 },
        { "elevations.from_deg", request => request.Elevations.FromDeg = -5 },
        { "azimuths.to_deg", request => request.Azimuths.ToDeg = -40 },
        { "plate_turns.step_deg", request => request.PlateTurns = new() { FromDeg = -180, ToDeg = 180, StepDeg = 0.5 } },
        { "plate_turns", request => SetStays(request.Scene) },
        { "highest_camera_mm", request => (request.LowestCameraMm, request.HighestCameraMm) = (500, 400) },
        { "weights", request => request.Weights = new() { MainInFront = 0, MainLarge = 0, ComponentsShow = 0, InsidesOpen = 0, DepthFits = 0 } },
        {
            "weights.depth_fits", request =>
            {
                request.Sharpness = null;
                request.Weights = new() { DepthFits = 1 };
            }
        },
        {
            "sharpness", request =>
            {
                request.ClearHighestCameraMm();
                request.Camera.FarFieldWidthMm = 300;
                request.Camera.Lens = null;
            }
        },
        {
            "scene.components", request =>
            {
                foreach (var component in request.Scene.Components)
                {
                    component.Importance = 0;
                }
            }
        },
        { "scene.components[1].name", request => request.Scene.Components[1].Name = request.Scene.Components[0].Name },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void Requests_ThatDoNotHangTogether_AreRefusedByField(string field, Action<RankViewsRequest> change)
    {
        var request = Examples.Rank();
        change(request);
        Assert.Equal([field], Calls.Refused(() => Calls.PlateView.RankViews(request)).Select(bad => bad.Field));
    }

    private static void SetStays(Scene scene)
    {
        foreach (var component in scene.Components)
        {
            component.Stays = true;
        }

        foreach (var vessel in scene.Vessels)
        {
            vessel.Stays = true;
        }
    }

    private static Scene Turned(Scene scene, double deg)
    {
        var turned = scene.Clone();
        var (sin, cos) = Math.SinCos(deg * Math.PI / 180);
        foreach (var (place, stays, turn) in turned.Components.Select(one => (one.Base, one.Stays, (Action)(() => one.TurnDeg += deg)))
            .Concat(turned.Vessels.Select(one => (one.Base, one.Stays, (Action)(() => one.TurnDeg += deg)))))
        {
            if (!stays)
            {
                (place.XMm, place.YMm) = (place.XMm * cos - place.YMm * sin, place.XMm * sin + place.YMm * cos);
                turn();
            }
        }

        return turned;
    }
}

namespace StudioCalc.Maths.Tests;

public sealed class ViewStrokesTests
{
    [Fact]
    public void Outline_OfABall_IsACircle()
    {
        var strokes = ViewStrokes.Of(new([new(SolidKind.Ellipsoid, new(0, 0, -25), 0, 50, 50, 50)], []), new(default, 30, 40, null, 100, 100));
        var outline = Assert.Single(strokes);
        Assert.False(outline.IsHidden);
        Assert.All(outline.Places, at => Assert.Equal(25, Math.Sqrt(at.RightMm * at.RightMm + at.UpMm * at.UpMm), 0.3));
    }

    // Seen from a corner above, a box shows nine of its twelve edges.
    [Fact]
    public void Box_FromACorner_ShowsNineEdges()
    {
        var camera = new ViewGeometry(default, 40, 30, null, 100, 100);
        var box = new ViewSolid(SolidKind.Box, default, 0, 40, 40, 40);
        var corners = new Vector[8];
        box.Corners(corners);
        var hidden = camera.Project(corners.MaxBy(camera.DepthOf));
        var strokes = ViewStrokes.Of(new([box], []), camera);
        Assert.Equal(1 + 9, strokes.Count);
        Assert.DoesNotContain(strokes.SelectMany(stroke => stroke.Places), at =>
            Math.Abs(at.RightMm - hidden.RightMm) + Math.Abs(at.UpMm - hidden.UpMm) < 1);
    }

    [Fact]
    public void Stretches_BehindAWall_AreHidden_AndNoOthers()
    {
        var wall = new ViewSolid(SolidKind.Box, new(0, -50, 0), 0, 200, 2, 20);
        var box = new ViewSolid(SolidKind.Box, new(0, 0, 0), 0, 40, 40, 40);
        var strokes = ViewStrokes.Of(new([wall, box], []), new(default, 0, 0, null, 300, 200));
        Assert.All(strokes.Where(stroke => stroke.Thing == 0), stroke => Assert.False(stroke.IsHidden));
        var own = strokes.Where(stroke => stroke.Thing == 1).ToList();
        Assert.All(own.Where(stroke => stroke.IsHidden).SelectMany(stroke => stroke.Places), at => Assert.InRange(at.UpMm, -1e-9, 22));
        Assert.All(own.Where(stroke => !stroke.IsHidden).SelectMany(stroke => stroke.Places), at => Assert.InRange(at.UpMm, 18, 40.001));
        Assert.Contains(own, stroke => stroke.IsHidden);
    }

    [Fact]
    public void Plan_OfABowl_IsItsRimAndContent_RoundTheirMiddle()
    {
        var bowl = new ViewVessel(
            new() { RimWidthMm = 200, RimDepthMm = 200, RimHeightMm = 60, FloorShare = 0.5, ContentHeightMm = 30 }, new(10, 20, 0), 0);
        var radii = ViewStrokes.Of(new([], [bowl]), ViewGeometry.Above)
            .SelectMany(stroke => stroke.Places)
            .Select(at => Math.Round(new Vector(at.RightMm - 10, at.UpMm - 20, 0).Length, 6))
            .Distinct().Order();
        Assert.Equal([75, 100], radii);
    }
}

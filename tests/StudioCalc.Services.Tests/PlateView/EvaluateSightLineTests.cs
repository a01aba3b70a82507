using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateSightLineTests
{
    private static EvaluateSightLineResponse Line(Action<EvaluateSightLineRequest> change)
    {
        var request = Examples.SightLine();
        change(request);
        return Calls.PlateView.EvaluateSightLine(request);
    }

    [Fact]
    public void Elevation_FromTheVertical_IsConvertedAndToldSo()
    {
        var answer = Line(_ => { });
        Assert.Equal(40, answer.ElevationDeg);
        Assert.Contains(answer.Advisories, advisory => advisory.Code == AdvisoryCode.ElevationConverted);
        Assert.Equal(95 - 60 * Math.Tan(40 * Math.PI / 180), answer.HiddenHeightMm, 1e-9);
        Assert.Equal(answer.HiddenHeightMm, Line(request => (request.ElevationDeg, request.ElevationOrigin) = (40, ElevationOrigin.Table)).HiddenHeightMm, 1e-9);
    }

    [Fact]
    public void Gap_SentBack_ShowsAll()
    {
        var gap = Line(_ => { }).WholeShowsGapMm;
        Assert.Equal(1, Line(request => request.GapMm = gap).VisibleHeightShare, 1e-12);
        Assert.True(Line(request => request.GapMm = gap * 0.99).VisibleHeightShare < 1);
    }

    [Fact]
    public void Touching_NeverShowsAll_AndHasNoElevations()
    {
        var answer = Line(request => (request.GapMm, request.ElevationDeg, request.ElevationOrigin) = (0, 0, ElevationOrigin.Table));
        Assert.Equal((false, false, false), (answer.HasTopShowsDeg, answer.HasWholeShowsDeg, answer.HasWholeShowsGapMm));
        Assert.Equal((0, 45), (answer.VisibleHeightShare, answer.HiddenHeightMm));
        var told = Assert.Single(answer.Advisories, advisory => advisory.Code == AdvisoryCode.NothingShows);
        Assert.Empty(told.Values);
    }

    [Fact]
    public void BadFields_AreAllNamed() => Assert.Equal(
        [("back_height_mm", "OUT_OF_RANGE"), ("gap_mm", "OUT_OF_RANGE"), ("elevation_deg", "REQUIRED")],
        Calls.Refused(() => Line(request =>
        {
            (request.BackHeightMm, request.GapMm) = (0, -1);
            request.ClearElevationDeg();
        })));
}

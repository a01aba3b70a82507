using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateBowlTests
{
    public static TheoryData<string, string, Action<EvaluateBowlRequest>> Bad => new()
    {
        { "content_diameter_mm", "CONFLICT", request => request.ContentDiameterMm = 181 },
        { "distance_mm", "CONFLICT", request => request.DistanceMm = 90 },
        { "elevation_deg", "OUT_OF_RANGE", request => request.ElevationDeg = 91 },
        { "elevation_origin", "UNKNOWN_VALUE", request => request.ElevationOrigin = ElevationOrigin.Unspecified },
    };

    private static EvaluateBowlResponse Bowl(Action<EvaluateBowlRequest> change)
    {
        var request = Examples.Bowl();
        change(request);
        return Calls.PlateView.EvaluateBowl(request);
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<EvaluateBowlRequest> spoil) =>
        Assert.Equal([(field, reason)], Calls.Refused(() => Bowl(spoil)));

    [Fact]
    public void Elevations_SentBack_ShowWhatTheyPromise()
    {
        var first = Bowl(_ => { });
        Assert.Equal(0, Bowl(request => request.ElevationDeg = first.FirstGlimpseDeg).VisibleShare);
        Assert.Equal(0.5, Bowl(request => request.ElevationDeg = first.HalfElevationDeg).VisibleShare, 1e-9);
        Assert.Equal(1, Bowl(request => request.ElevationDeg = first.WholeElevationDeg).VisibleShare);
        var middle = Bowl(request => request.ElevationDeg = first.CentreElevationDeg);
        Assert.Equal(0.5, middle.CentreLineShare, 1e-9);
        Assert.Equal(first.ShareAtCentreElevation, middle.VisibleShare, 1e-9);
    }

    [Fact]
    public void Elevation_FromTheVertical_IsConvertedAndToldSo()
    {
        var (table, vertical) = (Bowl(_ => { }), Bowl(request => (request.ElevationDeg, request.ElevationOrigin) = (55, ElevationOrigin.Vertical)));
        Assert.Equal(35, vertical.ElevationDeg);
        Assert.Equal(table.VisibleShare, vertical.VisibleShare, 1e-12);
        var told = Assert.Single(vertical.Advisories, advisory => advisory.Code == AdvisoryCode.ElevationConverted);
        Assert.Equal(("elevation_deg", 55, 35), (told.Field, told.Values["given_deg"], told.Values["elevation_deg"]));
    }

    [Fact]
    public void ContentLevelWithTheRim_HasNoFirstGlimpse()
    {
        var answer = Bowl(request => (request.ContentDepthMm, request.ElevationDeg) = (0, 0));
        Assert.False(answer.HasFirstGlimpseDeg);
        Assert.Equal((1, 0, 0, 0, 1), (answer.VisibleShare, answer.RimHeightShare, answer.CentreElevationDeg, answer.WholeElevationDeg, answer.ShareAtCentreElevation));
    }

    [Fact]
    public void UprightWalls_AreMeantByNoContentDiameter()
    {
        var bare = Bowl(request => request.ClearContentDiameterMm());
        Assert.Equal(bare, Bowl(request => request.ContentDiameterMm = 180));
        Assert.Equal(90, Bowl(request =>
        {
            request.ClearContentDiameterMm();
            request.ClearDistanceMm();
        }).WholeElevationDeg, 1e-12);
    }
}

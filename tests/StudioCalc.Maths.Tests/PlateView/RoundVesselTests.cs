using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>The closed form of a bowl against sight lines traced one by one.</summary>
public sealed class RoundVesselTests
{
    private static readonly Gen<RoundVessel> Vessels = Gen.Select(
        Gen.Double[20, 200], Gen.Double[0.2, 1], Gen.Double[1, 150], Gen.Double[1.05, 20], Gen.Bool,
        (a, share, h, far, isFar) => new RoundVessel(a, a * share, h, isFar ? double.PositiveInfinity : a * far));

    private static readonly Gen<double> Elevations = Gen.Double[1, 90];

    [Fact]
    public void VisibleShare_AnyVessel_IsThatOfTracedSightLines() => Gen.Select(Vessels, Elevations).Sample(
        (vessel, elevation) =>
        {
            const int Across = 300;
            var (seen, all) = (0, 0);
            for (var i = 0; i < Across; i++)
            {
                for (var j = 0; j < Across; j++)
                {
                    var (x, y) = (((2.0 * i + 1) / Across - 1) * vessel.ContentRadiusMm, ((2.0 * j + 1) / Across - 1) * vessel.ContentRadiusMm);
                    if (x * x + y * y <= vessel.ContentRadiusMm * vessel.ContentRadiusMm)
                    {
                        all++;
                        seen += IsSeen(vessel, elevation, x, y) ? 1 : 0;
                    }
                }
            }

            Assert.Equal((double)seen / all, vessel.VisibleShare(elevation), 4.0 / Across);
        },
        iter: 100);

    [Fact]
    public void LineShare_AnyVessel_IsThatOfTracedSightLines() => Gen.Select(Vessels, Elevations).Sample((vessel, elevation) =>
    {
        const int Places = 4000;
        var none = default(NoTrail);
        var seen = Enumerable.Range(0, Places).Count(i => IsSeen(vessel, elevation, 0, ((2.0 * i + 1) / Places - 1) * vessel.ContentRadiusMm));
        Assert.Equal((double)seen / Places, vessel.LineShare(elevation, ref none), 1.0 / Places);
    });

    [Fact]
    public void Shows_AnyPlaceOfTheMiddleLine_IsWhereItsSightLineTouchesTheRim() => Gen.Select(Vessels, Gen.Double[-1, 1]).Sample((vessel, share) =>
    {
        var behind = share * vessel.ContentRadiusMm;
        var elevation = vessel.ShowsDeg(behind);
        Assert.False(IsSeen(vessel, elevation - 1e-6, 0, behind));
        Assert.True(elevation > 90 - 1e-6 || IsSeen(vessel, elevation + 1e-6, 0, behind));
    });

    [Fact]
    public void VisibleShare_RaisingTheCamera_NeverFalls() => Gen.Select(Vessels, Gen.Double[0, 90], Gen.Double[0, 90]).Sample((vessel, one, other) =>
        Assert.True(vessel.VisibleShare(Math.Min(one, other)) <= vessel.VisibleShare(Math.Max(one, other)) + 1e-9));

    [Fact]
    public void Half_AnyVessel_ShowsHalf_BetweenMiddleAndWhole() => Vessels.Sample(vessel =>
    {
        var half = vessel.HalfDeg();
        Assert.Equal(0.5, vessel.VisibleShare(half), 1e-9);
        Assert.InRange(half, vessel.ShowsDeg(0), vessel.WholeDeg);
        Assert.InRange(vessel.VisibleShare(vessel.ShowsDeg(0)), 0, 0.5);
        Assert.Equal(0, vessel.VisibleShare(vessel.FirstGlimpseDeg));
        Assert.Equal(1, vessel.VisibleShare(vessel.WholeDeg));
    });

    [Fact]
    public void Lengths_AllScaled_LeaveEverySharesAsItIs() => Gen.Select(Vessels, Elevations, Gen.Double[0.1, 10]).Sample((vessel, elevation, by) =>
    {
        var none = default(NoTrail);
        var scaled = new RoundVessel(by * vessel.RimRadiusMm, by * vessel.ContentRadiusMm, by * vessel.DepthMm, by * vessel.DistanceMm);
        Assert.Equal(vessel.VisibleShare(elevation), scaled.VisibleShare(elevation), 1e-9);
        Assert.Equal(vessel.RimHeightShare(elevation, ref none), scaled.RimHeightShare(elevation, ref none), 1e-12);
        Assert.Equal(vessel.HalfDeg(), scaled.HalfDeg(), 1e-9);
    });

    [Fact]
    public void Camera_MovedFarAway_ShowsWhatAFarOneDoes() => Gen.Select(Vessels, Elevations).Sample((vessel, elevation) =>
    {
        var far = new RoundVessel(vessel.RimRadiusMm, vessel.ContentRadiusMm, vessel.DepthMm);
        var distant = new RoundVessel(vessel.RimRadiusMm, vessel.ContentRadiusMm, vessel.DepthMm, 1e12);
        Assert.Equal(far.VisibleShare(elevation), distant.VisibleShare(elevation), 1e-4);
    });

    // The rim of a plate, drawn by a camera aimed at its middle.
    [Fact]
    public void RimHeight_AnyPlate_IsThatOfItsProjectedRim() => Gen.Select(Gen.Double[20, 200], Gen.Double[1.1, 20], Elevations).Sample((a, far, elevation) =>
    {
        var none = default(NoTrail);
        var back = Vector.Towards(0, elevation);
        var camera = back * (a * far);
        var (right, up) = (new Vector(1, 0, 0), (-back).Cross(new Vector(-1, 0, 0)));
        var (width, low, high) = (0.0, double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < 3600; i++)
        {
            var (sin, cos) = Math.SinCos(i * Math.PI / 1800);
            var way = new Vector(a * cos, a * sin, 0) - camera;
            var depth = -way.Dot(back);
            width = Math.Max(width, way.Dot(right) / depth);
            (low, high) = (Math.Min(low, way.Dot(up) / depth), Math.Max(high, way.Dot(up) / depth));
        }

        Assert.Equal((high - low) / (2 * width), new RoundVessel(a, a, 0, a * far).RimHeightShare(elevation, ref none), 1e-4);
    });

    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    [InlineData(90)]
    public void ContentLevelWithTheRim_ShowsFromEverywhere(double elevation)
    {
        var vessel = new RoundVessel(80, 80, 0, 300);
        Assert.Equal((1, 0, 0, 0), (vessel.VisibleShare(elevation), vessel.FirstGlimpseDeg, vessel.HalfDeg(), vessel.WholeDeg));
    }

    [Fact]
    public void Vessel_ThatNarrowsToItsRim_OrHoldsTheCamera_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new RoundVessel(80, 80.1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RoundVessel(80, 80, 10, 80));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RoundVessel(80, 80, -1));
    }

    // A place of the content, to the right of and behind its middle, seen past the rim.
    private static bool IsSeen(RoundVessel vessel, double elevationDeg, double right, double behind)
    {
        var (sin, cos) = Math.SinCos(elevationDeg * Math.PI / 180);
        var way = double.IsInfinity(vessel.DistanceMm)
            ? new Vector(0, -cos, sin)
            : new Vector(-right, -vessel.DistanceMm * cos - behind, vessel.DistanceMm * sin + vessel.DepthMm);
        var share = vessel.DepthMm / way.Z;
        var (x, y) = (right + way.X * share, behind + way.Y * share);
        return way.Z > 0 && share <= (double.IsInfinity(vessel.DistanceMm) ? double.PositiveInfinity : 1) && x * x + y * y <= vessel.RimRadiusMm * vessel.RimRadiusMm;
    }
}

using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class PlacementTests
{
    private static readonly Gen<PlacedComponent> Component = Gen.Select(
        Gen.Double[-100, 100], Gen.Double[-100, 100], Gen.Double[0, 60], Gen.Double[0, 60], Gen.Double[0, 40], Gen.Double[0, 1],
        (x, y, z, d, h, importance) => new PlacedComponent(new(x, y, z, d, h), importance));

    private static readonly Gen<PlacementInput> Any = Gen.Select(
        Gen.Double[0.03, 0.3], Gen.Double[0.6, 1.8], Gen.Double[0, 90], Gen.Double[-180, 180], Component.Array[1, 6], Gen.Double[0.01, 0.1],
        Gen.Double[-20, 20],
        (m, p, e, a, components, blur, higher) => new PlacementInput
        {
            Aim = new(100, m, p),
            View = new(e, a),
            Components = components,
            Main = 0,
            PermittedBlurMm = blur,
            Range = Depths.Thirds,
            FreshPlateHigherMm = higher,
        }).Where(input => input.Components.All(component => input.PointsOf(component).NearMm > 120));

    [Theory]
    [InlineData(0, 0, 0, -50, 0, -50)]
    [InlineData(0, 0, 0, 50, 0, 50)]
    [InlineData(90, 0, 0, 0, 50, -50)]
    [InlineData(90, 30, 80, 90, 50, -50)]
    [InlineData(0, 90, 50, 0, 0, -50)]
    [InlineData(30, 0, 0, 0, 50, -25)]
    public void Depth_OfAPoint_IsLessTowardsTheCamera(double e, double a, double x, double y, double z, double expected)
    {
        var none = default(NoTrail);
        var (near, far) = new ViewAxis(e, a).DepthOf(new(x, y, z, 0, 0), ref none);
        Assert.Equal(expected, near, 1e-9);
        Assert.Equal(expected, far, 1e-9);
    }

    [Fact]
    public void Depth_OfACylinder_IsThatOfItsRim() => Gen.Select(Component, Gen.Double[0, 90], Gen.Double[-180, 180]).Sample((component, e, a) =>
    {
        var none = default(NoTrail);
        var (shape, axis) = (component.Shape, new ViewAxis(e, a));
        var (near, far) = axis.DepthOf(shape, ref none);
        var rim = Enumerable.Range(0, 7200).Select(i => i * Math.PI / 3600).SelectMany(turn => new[] { 0, shape.HeightMm }.Select(up =>
        {
            var radius = shape.DiameterMm / 2;
            return axis.DepthOf(
                new(shape.RightMm + radius * Math.Cos(turn), shape.AwayMm + radius * Math.Sin(turn), shape.UpMm + up, 0, 0), ref none).NearMm;
        })).ToList();
        Assert.Equal(rim.Min(), near, 1e-4);
        Assert.Equal(rim.Max(), far, 1e-4);
    }, iter: 50);

    [Fact]
    public void Placement_Reached_KeepsTheMainComponentWhole_AndSlipsExactly() => Any.Sample(input =>
    {
        var none = default(NoTrail);
        var outcome = Placement.Solve(input, ref none);
        var (main, x) = (input.PointsOf(input.Components[0]), outcome.Lens.FromEntrancePupilMm);
        if (outcome.Obstacle != DepthObstacle.None)
        {
            Assert.False(outcome.Components[0].IsSharp);
            Assert.True(outcome.ShortfallMm > 0 && outcome.SlipForwardMm < 0 && outcome.SlipBackMm < 0);
            return;
        }

        Assert.True(outcome.Components[0].IsSharp);
        Depths.Near(main.FarMm, Zone(x - outcome.SlipForwardMm).FarFromEntrancePupilMm, 1e-9);
        if (outcome.SlipBackMm is { } back)
        {
            Depths.Near(main.NearMm, Zone(x + back).NearFromEntrancePupilMm, 1e-9);
        }

        SharpZone Zone(double distance) =>
            SharpZone.Evaluate(outcome.Lens.RefocusedAt(distance), outcome.FNumber, input.PermittedBlurMm);
    });

    [Fact]
    public void Placement_AgainstEveryOtherFocus_HoldsMostImportance() => Any.Sample(input =>
    {
        var none = default(NoTrail);
        var outcome = Placement.Solve(input, ref none);
        if (outcome.Obstacle != DepthObstacle.None)
        {
            return;
        }

        var held = Held(outcome.Lens);
        for (var distance = 101 / input.Aim.PupilMagnification; distance < 6000; distance *= 1.002)
        {
            Assert.True(Held(outcome.Lens.RefocusedAt(distance)) <= held + 1e-9);
        }

        double Held(LensFocus lens)
        {
            var zone = SharpZone.Evaluate(lens, outcome.FNumber, input.PermittedBlurMm);
            var sharp = input.Components.Select(component =>
            {
                var points = input.PointsOf(component);
                return ComponentBlur.Evaluate(lens, outcome.FNumber, zone, points.NearMm, points.FarMm).IsSharp ? component.Importance : -1;
            }).ToList();
            return sharp[0] < 0 ? 0 : sharp.Skip(1).Where(importance => importance > 0).Sum();
        }
    }, iter: 100);

    [Fact]
    public void Remedies_Applied_HoldTheMainComponent() => Gen.Select(Any, Gen.Double[2.8, 16], Gen.Bool).Sample((any, fNumber, isGiven) =>
    {
        var none = default(NoTrail);
        var input = any with { FNumber = isGiven ? fNumber : null };
        var outcome = Placement.Solve(input, ref none);
        var remedies = PlacementRemedies.For(input, outcome, 0.55);
        Assert.Equal(outcome.Obstacle == DepthObstacle.None, remedies.Count == 0);
        foreach (var remedy in remedies)
        {
            PlacementInput? changed = remedy.Kind switch
            {
                DepthRemedyKind.FrameWider => input with { Aim = remedy.Lens! },
                DepthRemedyKind.PermitMoreBlur => input with { PermittedBlurMm = remedy.PermittedBlurMm!.Value },
                DepthRemedyKind.CloseAperture => input with { FNumber = remedy.FNumber },
                _ => null,
            };
            if (changed is not null)
            {
                var after = Placement.Solve(changed, ref none);
                Assert.Equal(DepthObstacle.None, after.Obstacle);
                Assert.Equal(remedy.FNumber, after.FNumber, 1e-9);
            }
        }
    });

    [Fact]
    public void FreshPlateSetting_HoldsBothHeights_OrNoMarkDoes() => Gen.Select(Any, Gen.Double[2.8, 32], Gen.Bool).Sample((any, fNumber, isGiven) =>
    {
        var none = default(NoTrail);
        var input = any with { FNumber = isGiven ? fNumber : null };
        var shift = Placement.Solve(input, ref none).FreshPlateShiftMm;
        var setting = FreshPlateSetting.For(input, shift, 0.55);
        var main = input.PointsOf(input.Components[0]);
        var moved = main with { NearMm = main.NearMm - shift, FarMm = main.FarMm - shift };
        if (setting is null)
        {
            var both = main with { NearMm = Math.Min(main.NearMm, moved.NearMm), FarMm = Math.Max(main.FarMm, moved.FarMm) };
            var marks = Depths.Thirds.Settable().Where(mark => mark >= (input.FNumber ?? 0)).ToList();
            Assert.True(TwoPointFocus.Between(both) is not { } focus || new ApertureChoice(marks, 0.55).Widest(focus, input.PermittedBlurMm * (1 - 1e-6)) is null);
            return;
        }

        Assert.True(setting.Aperture.FNumber >= (input.FNumber ?? 0) * (1 - 1e-9));
        Depths.Near(input.Aim.FromEntrancePupilMm + setting.OffsetMm, setting.Lens.FromEntrancePupilMm, 1e-9);
        var airy = 2.44 * 0.00055 * setting.Aperture.FNumber * setting.Lens.EffectiveFactor;
        foreach (var point in new[] { main.NearMm, main.FarMm, moved.NearMm, moved.FarMm })
        {
            var blur = PointBlur.DiameterMm(setting.Lens, setting.Aperture.FNumber, point - setting.Lens.FromEntrancePupilMm);
            Assert.True(Math.Sqrt(blur * blur + airy * airy) <= input.PermittedBlurMm * (1 + 1e-6));
        }
    });

    [Fact]
    public void FreshPlate_Higher_ComesNearerByTheSineOfTheElevation()
    {
        var none = default(NoTrail);
        var input = new PlacementInput
        {
            Aim = new(100, 0.1),
            View = new(30, 0),
            Components = [new(new(0, 0, 0, 0, 0), 1)],
            Main = 0,
            PermittedBlurMm = 0.03,
            FNumber = 8,
            Range = Depths.Thirds,
            FreshPlateHigherMm = 20,
        };
        var outcome = Placement.Solve(input, ref none);
        Assert.Equal(10, outcome.FreshPlateShiftMm, 1e-12);
        Assert.True(outcome.FreshPlateIsSharp);
        Assert.False(Placement.Solve(input with { FreshPlateHigherMm = 60 }, ref none).FreshPlateIsSharp);
        Assert.False(Placement.Solve(input with { FreshPlateHigherMm = -60 }, ref none).FreshPlateIsSharp);
    }
}

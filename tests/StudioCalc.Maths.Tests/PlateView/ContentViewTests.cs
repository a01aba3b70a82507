using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class ContentViewTests
{
    [Fact]
    public void Share_RandomVessel_AgreesWithCountedPoints() => Gen.Select(RandomScenes.Vessels, RandomScenes.Cameras).Sample((vessel, camera) =>
    {
        var (seen, points) = new SceneView(new([], [vessel]), camera, 200).Content(0, new int[1]);
        Assert.Equal((double)seen / points, ContentView.Share(vessel, camera), 0.012);
    });

    [Fact]
    public void Elevations_RandomVessel_AreWhereTheSharesTurn() => Gen.Select(RandomScenes.Vessels, RandomScenes.Cameras).Sample((vessel, camera) =>
    {
        var (centre, half, whole) = ContentView.Elevations(vessel, camera);
        if (half is > 0.01 and < 89.9)
        {
            Assert.True(ContentView.Share(vessel, camera.From(camera.AzimuthDeg, half.Value + 0.001)) >= 0.5);
            Assert.True(ContentView.Share(vessel, camera.From(camera.AzimuthDeg, half.Value - 0.001)) < 0.5);
        }

        if (whole is > 0.01 and < 89.9)
        {
            Assert.Equal(1, ContentView.Share(vessel, camera.From(camera.AzimuthDeg, whole.Value + 0.001)), 1e-9);
            Assert.True(ContentView.Share(vessel, camera.From(camera.AzimuthDeg, whole.Value - 0.5)) < 1);
        }

        if (whole is { } all && centre is { } middle)
        {
            Assert.True(middle <= all + 1e-9);
        }
    });

    // Two-circle overlap against counting points of the unit circle.
    [Fact]
    public void OverlapShare_RandomCircles_AgreesWithCountedPoints() => Gen.Select(Gen.Double[0, 3], Gen.Double[0.1, 2]).Sample((apart, other) =>
    {
        var (inside, both) = (0, 0);
        for (var i = 0; i < 300; i++)
        {
            for (var j = 0; j < 300; j++)
            {
                var (x, y) = ((i + 0.5) / 150 - 1, (j + 0.5) / 150 - 1);
                if (x * x + y * y <= 1)
                {
                    inside++;
                    both += (x - apart) * (x - apart) + y * y <= other * other ? 1 : 0;
                }
            }
        }

        Assert.Equal((double)both / inside, Circles.OverlapShare(apart, other, 1), 0.003);
    });
}

using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Where a small thing mirrors: the image of the camera for a plane, and an own solve for curved surfaces.</summary>
public sealed class MirrorPointTests
{
    private const double SmallMm = 4;

    [Fact]
    public void Plane_MirrorsWhereTheLineFromTheCamerasImageMeetsIt() => Gen.Select(Mirrors.Cameras, Mirrors.Places).Sample((camera, place) =>
    {
        var image = camera with { Z = -camera.Z };
        var expected = image + (place - image) * (-image.Z / (place.Z - image.Z));
        var shape = Mirrors.Flat(3000, 3000);
        if (Math.Max(Math.Abs(expected.X), Math.Abs(expected.Y)) > 1490)
        {
            return;
        }

        var found = Assert.Single(Mirrors.View(shape, camera, 32, new MirrorBall(place, SmallMm)).Reflections);
        Assert.InRange((found.Middle - expected).Length, 0, 2 * SmallMm);
        Assert.Equal(0, found.Middle.Z, 1e-9);
    }, iter: 50);

    // From above, the ray comes in and goes on at equal angles to the radius; its height runs evenly along both parts.
    [Fact]
    public void Cylinder_MirrorsWhereBothAnglesToTheRadiusAreEqual() => Gen.Select(
        Gen.Double[30, 100], Mirrors.Cameras, Mirrors.Places, Gen.Double[-80, 80]).Sample((diameter, camera, place, aside) =>
    {
        camera = Turned(camera, 0, 40);
        place = Turned(place, aside, 40);
        var radius = diameter / 2;
        var angle = Solve(camera, place, radius);
        var at = new Vector(radius * Math.Cos(angle), radius * Math.Sin(angle), 0);
        var (there, back) = (Level(camera - at).Length, Level(place - at).Length);
        var expected = at with { Z = camera.Z + (place.Z - camera.Z) * there / (there + back) };

        var found = Assert.Single(Mirrors.View(new MirrorCylinder(new(0, 0, -5000), diameter, 10000), camera, 64, new MirrorBall(place, SmallMm)).Reflections);
        Assert.InRange((Level(found.Middle - expected)).Length, 0, SmallMm);
        Assert.InRange(Math.Abs(found.Middle.Z - expected.Z), 0, 2 * SmallMm);
    }, iter: 50);

    // The point lies in the plane of camera, thing and centre.
    [Fact]
    public void Ball_MirrorsWhereBothAnglesToTheRadiusAreEqual() => Gen.Select(
        Gen.Double[20, 150], Mirrors.Cameras, Mirrors.Places).Sample((diameter, camera, place) =>
    {
        var first = camera.Unit();
        var second = place - first * place.Dot(first);
        if (second.Length < 1 || place.Dot(first) < -0.5 * place.Length)
        {
            return;
        }

        second = second.Unit();
        var angle = Solve(new(camera.Length, 0, 0), new(place.Dot(first), place.Dot(second), 0), diameter / 2);
        var expected = (first * Math.Cos(angle) + second * Math.Sin(angle)) * (diameter / 2);
        if (expected.Z < 0.02 * diameter)
        {
            return;
        }

        var found = Assert.Single(Mirrors.View(new MirrorDome(default, diameter), camera, 64, new MirrorBall(place, SmallMm)).Reflections);
        Assert.InRange((found.Middle - expected).Length, 0, 0.02 * diameter);
    }, iter: 50);

    // The angle between the ways to both places, halved until they make equal angles with the radius.
    private static double Solve(Vector one, Vector other, double radius)
    {
        var (low, high) = (Math.Atan2(one.Y, one.X), Math.Atan2(other.Y, other.X));
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            var (to, from) = (Off(one, middle), Off(other, middle));
            (low, high) = to < from ? (middle, high) : (low, middle);
        }

        return low;

        double Off(Vector place, double angle)
        {
            var normal = new Vector(Math.Cos(angle), Math.Sin(angle), 0);
            var way = Level(place) - normal * radius;
            return Math.Acos(Math.Clamp(way.Unit().Dot(normal), -1, 1));
        }
    }

    private static Vector Level(Vector place) => place with { Z = 0 };

    // At an angle about the vertical axis and at a height.
    private static Vector Turned(Vector place, double degrees, double height)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(place.Length * cos, place.Length * sin, height + place.Z / 10);
    }
}

using static System.Math;

namespace StudioCalc.Maths.Tests;

/// <summary>Another way to what a camera sees: it walks along each line of sight in small steps and asks whether a point lies inside.</summary>
internal sealed class MarchedScene(ViewScene scene)
{
    private const int Steps = 600;

    /// <summary>The thing that a line meets first from near to far, components first; -1 for none.</summary>
    public int First(in SightLine line, double from, double to, Func<int, bool> counts)
    {
        var along = line.Along.Unit();
        var before = new (bool IsWithin, bool IsOver)?[scene.Vessels.Count];
        for (var k = 0; k <= Steps; k++)
        {
            var point = line.From + along * (from + (to - from) * k / Steps);
            for (var i = 0; i < scene.Solids.Count; i++)
            {
                if (counts(i) && IsInside(scene.Solids[i], point))
                {
                    return i;
                }
            }

            for (var i = 0; i < scene.Vessels.Count; i++)
            {
                var vessel = scene.Vessels[i];
                var now = Where(vessel, point);
                if (counts(scene.Solids.Count + i) && before[i] is { } last && Passes(vessel, point, last, now))
                {
                    return scene.Solids.Count + i;
                }

                before[i] = now;
            }
        }

        return -1;
    }

    // Through the slanted side between base and rim, or through the level of the content within it.
    private static bool Passes(ViewVessel vessel, Vector point, (bool IsWithin, bool IsOver) last, (bool IsWithin, bool IsOver) now) =>
        (last.IsWithin != now.IsWithin && point.Z >= vessel.Base.Z && point.Z < vessel.Base.Z + vessel.Shape.RimHeightMm)
        || (last.IsOver != now.IsOver && now.IsWithin);

    private static (bool IsWithin, bool IsOver) Where(ViewVessel vessel, Vector point)
    {
        var (x, y, z) = Local(point, vessel.Base, vessel.TurnDeg, vessel.Shape.RimWidthMm, vessel.Shape.RimDepthMm);
        var rise = (z - vessel.Shape.FloorHeightMm) / (vessel.Shape.RimHeightMm - vessel.Shape.FloorHeightMm);
        var half = vessel.Shape.FloorShare + (1 - vessel.Shape.FloorShare) * rise;
        var isWithin = half > 0 && (vessel.Shape.IsRectangle ? Abs(x) < half && Abs(y) < half : x * x + y * y < half * half);
        return (isWithin, z > vessel.Shape.ContentHeightMm);
    }

    private static bool IsInside(ViewSolid solid, Vector point)
    {
        var (x, y, z) = Local(point, solid.Base, solid.TurnDeg, solid.WidthMm, solid.DepthMm);
        var (h, r) = (solid.HeightMm, Sqrt(x * x + y * y));
        return z >= 0 && z <= h && solid.Kind switch
        {
            SolidKind.Box => Abs(x) <= 1 && Abs(y) <= 1,
            SolidKind.ConeFrustum => r <= 1 + (solid.TopShare - 1) * z / h,
            SolidKind.Ellipsoid => r * r + Pow(2 * z / h - 1, 2) <= 1,
            _ => r * r + z * z / (h * h) <= 1,
        };
    }

    private static (double X, double Y, double Z) Local(Vector point, Vector middle, double turnDeg, double width, double depth)
    {
        var (a, x, y) = (-turnDeg * PI / 180, point.X - middle.X, point.Y - middle.Y);
        return ((x * Cos(a) - y * Sin(a)) * 2 / width, (x * Sin(a) + y * Cos(a)) * 2 / depth, point.Z - middle.Z);
    }
}

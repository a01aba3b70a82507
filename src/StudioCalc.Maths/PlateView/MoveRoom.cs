using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Where a component may be moved on the level: on what it stands, and without running into others.</summary>
/// <remarks>
/// <para>It stands on the table, or in the vessel over whose content's outline its middle lies and between whose floor and rim
/// its base does; there its outline stays within that of the vessel at its base, or sticks out no further than it did. One that
/// rests on another component, floats, or carries another is not moved. Outlines are those seen from above, and meet where
/// no line of 72 directions parts them; only things whose heights meet run into one another, and only those that did not
/// before.</para>
/// </remarks>
internal sealed class MoveRoom
{
    private const int Directions = 72;
    private const double TouchingMm = 1;

    private readonly ViewScene _scene;
    private readonly int _solid;
    private readonly int? _vessel;
    private readonly double _reach;
    private readonly bool[] _met;

    private MoveRoom(ViewScene scene, int solid, int? vessel)
    {
        (_scene, _solid, _vessel) = (scene, solid, vessel);
        _reach = vessel is { } v ? Max(ShareAt(scene.Vessels[v], scene.Solids[solid]), Widest(scene.Solids[solid], scene.Vessels[v])) : 0;
        _met = [.. Enumerable.Range(0, scene.Count).Select(thing => thing != solid && Meets(scene.Solids[solid], thing))];
    }

    /// <summary>The room of a component; null where it cannot be moved.</summary>
    public static MoveRoom? Of(ViewScene scene, int solid)
    {
        var support = SupportOf(scene, solid);
        if (support == Support.Other)
        {
            return null;
        }

        for (var other = 0; other < scene.Solids.Count; other++)
        {
            if (other != solid && SupportOf(scene, other) == Support.Other && RestsOn(scene.Solids[other], scene.Solids[solid]))
            {
                return null;
            }
        }

        return new(scene, solid, VesselOf(scene, scene.Solids[solid]));
    }

    /// <summary>Whether the component may stand elsewhere.</summary>
    public bool Holds(ViewSolid moved)
    {
        if (_vessel is { } vessel && Widest(moved, _scene.Vessels[vessel]) > _reach + 1e-9)
        {
            return false;
        }

        for (var thing = 0; thing < _scene.Count; thing++)
        {
            if (thing != _solid && !_met[thing] && Meets(moved, thing))
            {
                return false;
            }
        }

        return true;
    }

    private static Support SupportOf(ViewScene scene, int solid) =>
        VesselOf(scene, scene.Solids[solid]) is not null ? Support.Vessel
        : Abs(scene.Solids[solid].Base.Z) <= TouchingMm ? Support.Table
        : Support.Other;

    private static int? VesselOf(ViewScene scene, ViewSolid solid)
    {
        for (var i = 0; i < scene.Vessels.Count; i++)
        {
            var vessel = scene.Vessels[i];
            var (middle, height) = (vessel.Frame.Into(solid.Base), solid.Base.Z - vessel.Base.Z);
            if (height >= vessel.Shape.FloorHeightMm - TouchingMm
                && height <= vessel.Shape.ContentHeightMm + TouchingMm
                && Norm(vessel, middle) <= ShareAt(vessel, solid))
            {
                return i;
            }
        }

        return null;
    }

    private static bool RestsOn(ViewSolid upper, ViewSolid lower) =>
        upper.Base.Z >= lower.Base.Z && upper.Base.Z <= lower.Base.Z + lower.HeightMm + TouchingMm && Gap(upper, lower.Reach) < 0;

    private static double ShareAt(ViewVessel vessel, ViewSolid solid) => vessel.WidthAt(solid.Base.Z - vessel.Base.Z);

    private static double Norm(ViewVessel vessel, Vector local) =>
        vessel.Shape.IsRectangle ? Max(Abs(local.X), Abs(local.Y)) : Sqrt(local.X * local.X + local.Y * local.Y);

    // How far an outline reaches in half widths of the rim.
    private static double Widest(ViewSolid solid, ViewVessel vessel)
    {
        var widest = 0.0;
        for (var i = 0; i < Directions; i++)
        {
            var (sin, cos) = SinCos(2 * PI * i / Directions);
            var corner = solid.Kind == SolidKind.Box ? 1 / Max(Abs(sin), Abs(cos)) : 1;
            widest = Max(widest, Norm(vessel, vessel.Frame.Into(solid.OnSet(cos * corner, sin * corner, 0))));
        }

        return widest;
    }

    private bool Meets(ViewSolid solid, int thing)
    {
        var (low, high) = thing < _scene.Solids.Count
            ? Heights(_scene.Solids[thing].Base.Z, _scene.Solids[thing].HeightMm)
            : Heights(_scene.Vessels[thing - _scene.Solids.Count].Base.Z, _scene.Vessels[thing - _scene.Solids.Count].Shape.RimHeightMm);
        if (solid.Base.Z >= high || solid.Base.Z + solid.HeightMm <= low)
        {
            return false;
        }

        return Gap(solid, thing < _scene.Solids.Count ? _scene.Solids[thing].Reach : _scene.Vessels[thing - _scene.Solids.Count].Reach) < 0;
    }

    private static (double Low, double High) Heights(double baseMm, double heightMm) => (baseMm, baseMm + heightMm);

    // The widest strip between two outlines; negative where they overlap.
    private static double Gap(ViewSolid one, Func<Vector, double> other)
    {
        var gap = double.NegativeInfinity;
        for (var i = 0; i < Directions; i++)
        {
            var (sin, cos) = SinCos(2 * PI * i / Directions);
            var direction = new Vector(cos, sin, 0);
            gap = Max(gap, -one.Reach(-direction) - other(direction));
        }

        return gap;
    }

    private enum Support
    {
        Table,
        Vessel,
        Other,
    }
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What stands on the table, as a request tells it.</summary>
/// <param name="Scene">Components and vessels.</param>
/// <param name="Names">Their names, components first.</param>
/// <param name="Stays">Which stay when the plate is turned, components first.</param>
/// <param name="Importances">How much each component matters.</param>
/// <param name="Main">The place of the main component.</param>
internal sealed record SceneRead(
    ViewScene Scene, IReadOnlyList<string> Names, IReadOnlyList<bool> Stays, IReadOnlyList<double> Importances, int Main);

/// <summary>Reads scenes of plates and food.</summary>
internal static class SceneReader
{
    private const double DefaultTopShare = 0.5;

    /// <summary>Reads a scene; null after noting what is bad.</summary>
    public static SceneRead? ReadScene(this RequestContext context, Scene scene, FieldPath path)
    {
        var noted = context.Violations.Any;
        var components = path[Scene.ComponentsFieldNumber];
        var vessels = path[Scene.VesselsFieldNumber];
        context.CheckNames(scene, components, vessels);
        var main = context.ReadMain(scene, components);
        var solids = scene.Components.Select((component, i) => context.Read(component, components.At(i))).ToList();
        var pots = scene.Vessels.Select((vessel, i) => context.Read(vessel, vessels.At(i))).ToList();
        if ((!noted && context.Violations.Any) || solids.Contains(null) || pots.Contains(null))
        {
            return null;
        }

        return new(
            new([.. solids.OfType<ViewSolid>()], [.. pots.OfType<ViewVessel>()]),
            [.. scene.Components.Select(component => component.Name), .. scene.Vessels.Select(vessel => vessel.Name)],
            [.. scene.Components.Select(component => component.Stays), .. scene.Vessels.Select(vessel => vessel.Stays)],
            [.. scene.Components.Select(ImportanceOf)],
            main);
    }

    private static double ImportanceOf(ViewComponent component) => component.HasImportance ? component.Importance : 1;

    private static void CheckNames(this RequestContext context, Scene scene, FieldPath components, FieldPath vessels)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var places = scene.Components.Select((component, i) => (component.Name, Path: components.At(i)[ViewComponent.NameFieldNumber]))
            .Concat(scene.Vessels.Select((vessel, i) => (vessel.Name, Path: vessels.At(i)[Vessel.NameFieldNumber])));
        foreach (var (name, at) in places)
        {
            if (!seen.Add(name))
            {
                context.Violations.Add(at.ToString(), RefusalReason.Conflict, "Another thing of the scene has this name; each needs its own.");
            }
        }
    }

    private static int ReadMain(this RequestContext context, Scene scene, FieldPath path)
    {
        int? main = null;
        for (var i = 0; i < scene.Components.Count; i++)
        {
            if (!scene.Components[i].IsMain)
            {
                continue;
            }

            if (main is not null)
            {
                context.Violations.Add(path.At(i)[ViewComponent.IsMainFieldNumber].ToString(), RefusalReason.Conflict,
                    $"Component {main.Value} is the main one already; there is one.");
            }

            main ??= i;
        }

        return main ?? Enumerable.Range(0, scene.Components.Count).MaxBy(i => ImportanceOf(scene.Components[i]));
    }

    private static ViewSolid? Read(this RequestContext context, ViewComponent component, FieldPath path)
    {
        if (component.HasTopShare && component.Kind != V1.SolidKind.ConeFrustum)
        {
            context.Violations.Add(path[ViewComponent.TopShareFieldNumber].ToString(), RefusalReason.Conflict,
                "Only a cone frustum has a top of another width; leave it out.");
            return null;
        }

        var kind = component.Kind switch
        {
            V1.SolidKind.Box => Maths.SolidKind.Box,
            V1.SolidKind.Ellipsoid => Maths.SolidKind.Ellipsoid,
            V1.SolidKind.Heap => Maths.SolidKind.Heap,
            _ => Maths.SolidKind.ConeFrustum,
        };
        var top = component.Kind == V1.SolidKind.Cylinder ? 1 : component.HasTopShare ? component.TopShare : DefaultTopShare;
        return new(
            kind, component.Base.ToVector(), component.TurnDeg, component.WidthMm,
            component.HasDepthMm ? component.DepthMm : component.WidthMm, component.HeightMm, top);
    }

    private static ViewVessel? Read(this RequestContext context, Vessel vessel, FieldPath path)
    {
        var content = vessel.HasContentHeightMm ? vessel.ContentHeightMm : vessel.FloorHeightMm;
        if (vessel.FloorHeightMm >= vessel.RimHeightMm)
        {
            context.Violations.Add(path[Vessel.FloorHeightMmFieldNumber].ToString(), RefusalReason.Conflict, "The floor must lie below the rim.");
            return null;
        }

        if (content < vessel.FloorHeightMm || content > vessel.RimHeightMm)
        {
            context.Violations.Add(path[Vessel.ContentHeightMmFieldNumber].ToString(), RefusalReason.Conflict,
                "The content's surface must lie between the floor and the rim.");
            return null;
        }

        var shape = new VesselShape
        {
            IsRectangle = vessel.Outline == VesselOutline.Rectangle,
            RimWidthMm = vessel.RimWidthMm,
            RimDepthMm = vessel.HasRimDepthMm ? vessel.RimDepthMm : vessel.RimWidthMm,
            FloorShare = vessel.HasFloorShare ? vessel.FloorShare : 1,
            RimHeightMm = vessel.RimHeightMm,
            FloorHeightMm = vessel.FloorHeightMm,
            ContentHeightMm = content,
            HasClearWalls = vessel.ClearWalls,
        };
        return new(shape, vessel.Base.ToVector(), vessel.TurnDeg);
    }
}

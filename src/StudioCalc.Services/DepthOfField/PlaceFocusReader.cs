using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What <c>PlaceFocus</c> calculates with.</summary>
internal sealed record PlacementRead(PlacementInput Input, SensorRead? Sensor);

/// <summary>Reads a request of <c>PlaceFocus</c>.</summary>
internal static class PlaceFocusReader
{
    private const double DefaultImportance = 0.5;
    private const double LargestMagnification = 20;
    private const double FurthestMm = 1e6;

    public static double ImportanceOf(FocusComponent component) =>
        component.HasImportance ? component.Importance : DefaultImportance;

    /// <summary>Reads the request; null after noting a bad field.</summary>
    /// <param name="context">Gets what is bad.</param>
    /// <param name="request">The request.</param>
    /// <param name="root">Where it stands in the request of the call.</param>
    /// <param name="trail">Follows the sum.</param>
    public static PlacementRead? Read<TTrail>(RequestContext context, PlaceFocusRequest request, FieldPath root, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var componentsPath = root[PlaceFocusRequest.ComponentsFieldNumber];
        var cameraPath = root[PlaceFocusRequest.CameraFieldNumber];
        var optics = context.Read(request.Camera, cameraPath, ref trail);
        var closenessPath = cameraPath[FocusedCamera.ClosenessFieldNumber];
        if (context.RefuseInfinity(optics?.Lens, closenessPath))
        {
            optics = null;
        }
        else if (optics?.Lens.FromSensorMm > FurthestMm)
        {
            context.Violations.Add(closenessPath.ToString(), RefusalReason.OutOfRange,
                "The plane through the aim point must be no further than 1000000 mm from the sensor.");
            optics = null;
        }

        // Without a lens only the blur cannot be read, because its sensor may be what is bad.
        var blur = optics is null ? null : context.ReadBlurMm(request.PermittedBlur, optics.Sensor, root[PlaceFocusRequest.PermittedBlurFieldNumber], ref trail);
        var aperture = request.Aperture is null ? null : context.ReadSetFNumber(
            request.Aperture, optics?.Lens, root[PlaceFocusRequest.ApertureFieldNumber], ref trail, setField: "");
        var limits = context.ReadLimits(request.Limits, root[PlaceFocusRequest.LimitsFieldNumber]);
        var main = MainOf(context, request, componentsPath);
        if (optics is null || blur is null || limits is null || main is null || (request.Aperture is not null && aperture is null))
        {
            return null;
        }

        var input = new PlacementInput
        {
            Aim = optics.Lens,
            View = new(request.Direction.ElevationDeg, request.Direction.AzimuthDeg),
            Components = [.. request.Components.Select(component => Component(component, request.Direction.AimPoint))],
            Main = main.Value,
            PermittedBlurMm = blur.Value,
            FNumber = aperture,
            Range = new(limits.WidestFNumber, limits.SmallestFNumber, context.Scale),
            FreshPlateHigherMm = request.FreshPlateHigherMm,
        };
        CheckPlaces(context, input, componentsPath);
        return new(input, optics.Sensor);
    }

    private static PlacedComponent Component(FocusComponent component, Point? aim)
    {
        var (x, y, z) = aim is null ? (0, 0, 0) : (aim.XMm, aim.YMm, aim.ZMm);
        var foot = component.Position;
        return new(
            new(foot.XMm - x, foot.YMm - y, foot.ZMm - z, component.DiameterMm, component.HeightMm), ImportanceOf(component));
    }

    private static int? MainOf(RequestContext context, PlaceFocusRequest request, FieldPath path)
    {
        int? main = request.Components.Count == 1 ? 0 : null;
        for (var i = 0; request.Components.Count > 1 && i < request.Components.Count; i++)
        {
            if (!request.Components[i].Main)
            {
                continue;
            }

            if (main is not null)
            {
                context.Violations.Add(
                    path.At(i)[FocusComponent.MainFieldNumber].ToString(), RefusalReason.Conflict,
                    $"Component {main.Value} is the main one already; there is one.");
                continue;
            }

            main = i;
        }

        if (main is null)
        {
            context.Violations.Add(
                path.At(0)[FocusComponent.MainFieldNumber].ToString(), RefusalReason.Required,
                "Say of one of the components that it is the main one.");
        }

        return main;
    }

    private static void CheckPlaces(RequestContext context, PlacementInput input, FieldPath path)
    {
        for (var i = 0; i < input.Components.Count; i++)
        {
            var points = input.PointsOf(input.Components[i]);
            var isTooNear = points.NearMm <= 0;
            if (isTooNear
                || (i == input.Main && TwoPointFocus.Between(points) is not { NearMagnification: <= LargestMagnification }))
            {
                context.Violations.Add(
                    path.At(i)[FocusComponent.PositionFieldNumber].ToString(), RefusalReason.OutOfRange,
                    isTooNear
                        ? "All of the component must lie before the entrance pupil of the lens."
                        : "The lens would have to work beyond a magnification of 20 to focus on the nearest part of the main component.");
            }
        }
    }
}

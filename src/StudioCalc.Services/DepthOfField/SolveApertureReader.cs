using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What <c>SolveAperture</c> calculates with.</summary>
internal sealed record ApertureRead(
    DepthPoints Points, TwoPointFocus Focus, SensorRead? Sensor, double BlurMm, double WavelengthUm, ApertureRange Range);

/// <summary>Reads a request of <c>SolveAperture</c>.</summary>
internal static class SolveApertureReader
{
    private const double LargestMagnification = 20;
    private const double FurthestMm = 1e6;

    private static readonly FieldPath Root = FieldPath.Root(SolveApertureRequest.Descriptor);

    public static FieldPath BlurPath { get; } = Root[SolveApertureRequest.PermittedBlurFieldNumber];

    /// <summary>Reads the request; null after noting a bad field.</summary>
    public static ApertureRead? Read<TTrail>(RequestContext context, SolveApertureRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var sensor = context.ReadSensor(request.Sensor, Root[SolveApertureRequest.SensorFieldNumber]);
        var sensorIsBad = request.Sensor is not null && sensor is null;
        var blur = sensorIsBad ? null : context.ReadBlurMm(request.PermittedBlur, sensor, BlurPath, ref trail);
        var limits = context.ReadLimits(request.Limits, Root[SolveApertureRequest.LimitsFieldNumber]);
        var points = request.SubjectCase == SolveApertureRequest.SubjectOneofCase.Distances
            ? ByDistances(context, request.Lens, request.Distances)
            : sensorIsBad ? null : AroundFocus(context, request.Lens, request.AroundFocus, sensor, ref trail);
        trail.Section("focus");
        var focus = points is null ? null : Focus(context, points, ref trail);
        return focus is null || blur is null || limits is null
            ? null
            : new(
                points!,
                focus,
                sensor,
                blur.Value,
                request.HasWavelengthUm ? request.WavelengthUm : DepthOfFieldAdapter.DefaultWavelengthUm,
                new(limits.WidestFNumber, limits.SmallestFNumber, context.Scale));
    }

    private static DepthPoints? ByDistances(RequestContext context, Lens lens, NearAndFar distances)
    {
        if (!lens.HasFocalLengthMm)
        {
            context.Violations.Add(
                Root[SolveApertureRequest.LensFieldNumber][Lens.FocalLengthMmFieldNumber].ToString(), RefusalReason.Required,
                "Distances need the focal length at this focus.");
        }

        if (distances.FarMm - distances.NearMm < DepthRemedies.LeastDepthMm)
        {
            context.Violations.Add(
                Root[SolveApertureRequest.DistancesFieldNumber][NearAndFar.FarMmFieldNumber].ToString(), RefusalReason.OutOfRange,
                "Must be at least 0.001 mm beyond the near point.");
            return null;
        }

        return !lens.HasFocalLengthMm ? null : new()
        {
            FocalLengthMm = lens.FocalLengthMm,
            PupilMagnification = OpticsReader.PupilOf(lens),
            PrincipalSeparationMm = lens.PrincipalSeparationMm,
            FromSensor = distances.Origin == DistanceOrigin.Sensor,
            NearMm = distances.NearMm,
            FarMm = distances.FarMm,
        };
    }

    private static DepthPoints? AroundFocus<TTrail>(
        RequestContext context, Lens lens, DepthAroundFocus around, SensorRead? sensor, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var path = Root[SolveApertureRequest.AroundFocusFieldNumber];
        var closenessPath = path[DepthAroundFocus.ClosenessFieldNumber];
        var plane = context.ReadFocus(
            lens, around.Closeness, sensor, Root[SolveApertureRequest.LensFieldNumber], closenessPath, ref trail);
        if (around.FrontMm + around.BehindMm < DepthRemedies.LeastDepthMm)
        {
            context.Violations.Add(path[DepthAroundFocus.BehindMmFieldNumber].ToString(), RefusalReason.OutOfRange,
                "The depths in front and behind must be at least 0.001 mm together.");
            return null;
        }

        if (context.RefuseInfinity(plane, closenessPath))
        {
            return null;
        }

        if (plane?.FromSensorMm > FurthestMm)
        {
            context.Violations.Add(closenessPath.ToString(), RefusalReason.OutOfRange,
                "The plane must be no further than 1000000 mm from the sensor.");
            return null;
        }

        trail.Section("points");
        return plane is null ? null : DepthPoints.Around(plane, around.FrontMm, around.BehindMm, ref trail);
    }

    private static TwoPointFocus? Focus<TTrail>(RequestContext context, DepthPoints points, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (TwoPointFocus.Between(points, ref trail) is { NearMagnification: <= LargestMagnification } focus)
        {
            return focus;
        }

        var field = points.PlaneMm is null
            ? Root[SolveApertureRequest.DistancesFieldNumber][NearAndFar.NearMmFieldNumber]
            : Root[SolveApertureRequest.AroundFocusFieldNumber][DepthAroundFocus.FrontMmFieldNumber];
        var nearest = points.FocalLengthMm * (1 / LargestMagnification + 1 / points.PupilMagnification);
        context.Violations.Add(field.ToString(), RefusalReason.OutOfRange, points.FromSensor
            ? "No lens of this fixed focal length focuses so near its sensor. Count the distances from the entrance pupil, or give "
                + "the depth around a plane of known magnification."
            : FormattableString.Invariant($"The near point must lie at least {nearest:0.#} mm before the entrance pupil of this lens."));
        return null;
    }
}

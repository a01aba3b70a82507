using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>SolveTilt.</content>
public sealed partial class DepthOfFieldAdapter
{
    private static readonly FieldPath TiltRoot = FieldPath.Root(SolveTiltRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<SolveTiltResponse> SolveTilt(SolveTiltRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Tilt(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Tilt(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static SolveTiltResponse Tilt<TTrail>(SolveTiltRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var zone = ReadWedge(context, request, ref trail);
        CheckPoints(context, request);
        context.ThrowIfRefused();

        double? axis = request.Table is { } table
            ? table.DistanceCase == TablePlane.DistanceOneofCase.AxisMm
                ? table.AxisMm
                : TiltPlane.AxisMm(table.ElevationDeg, table.HeightMm, ref trail)
            : null;
        var plane = axis is { } distance
            ? TiltPlane.OfTable(request.Table!.ElevationDeg, distance, ref trail)
            : TiltPlane.OfPoints(At(request.Points.Near), At(request.Points.Far), ref trail);
        double? largest = request.HasLargestTiltDeg ? request.LargestTiltDeg : null;
        var outcome = TiltOutcome.Solve(request.FocalLengthMm, plane, largest, ref trail);
        var response = new SolveTiltResponse { ModelRevision = ModelRevision.Current };
        if (outcome is { Obstacle: null, Setting: { } setting })
        {
            response.Solution = Setting(request, setting, zone, "solution.", ref trail);
            if (!plane.IsParallel)
            {
                context.Advisories.Add(Advise.TiltLaysOnePlane());
                context.Advisories.Add(Advise.ScalesOffWhenTilted());
            }
        }
        else
        {
            response.NotReached = NotTilted(request, plane, outcome, zone, ref trail);
            if (axis is { } alongAxis && largest is { } most
                && TiltOutcome.LowestElevationDeg(request.FocalLengthMm, alongAxis, most) is { } lowest)
            {
                response.NotReached.LowestElevationDeg = lowest;
            }

            if (largest is { } tilt && outcome.Obstacle != Maths.TiltObstacle.PlaneTooNear)
            {
                TellWhatHelps(response.NotReached, request, plane, tilt);
            }
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void TellWhatHelps(TiltNotReached answer, SolveTiltRequest request, TiltPlane plane, double largestTiltDeg)
    {
        if (TiltOutcome.LongestFocalLengthMm(plane, largestTiltDeg) is { } focal)
        {
            answer.LongestFocalLengthMm = focal;
        }

        if (request.Table is { } table && TiltOutcome.LeastAxisMm(request.FocalLengthMm, table.ElevationDeg, largestTiltDeg) is { } axis)
        {
            answer.LeastAxisMm = axis;
        }
    }

    private static TiltNotReached NotTilted<TTrail>(
        SolveTiltRequest request, TiltPlane plane, TiltOutcome outcome, (double FNumber, double BlurMm)? zone, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var answer = new TiltNotReached
        {
            Obstacle = outcome.Obstacle switch
            {
                Maths.TiltObstacle.TiltRange => V1.TiltObstacle.TiltRange,
                Maths.TiltObstacle.HingeTooNear => V1.TiltObstacle.HingeTooNear,
                Maths.TiltObstacle.PlaneTooNear => V1.TiltObstacle.PlaneTooNear,
                _ => throw new ArgumentOutOfRangeException(nameof(outcome)),
            },
        };
        if (outcome.ShortfallDeg is { } deg)
        {
            answer.ShortfallDeg = deg;
        }

        if (outcome.ShortfallMm is { } mm)
        {
            answer.ShortfallMm = mm;
        }

        if (!plane.IsParallel)
        {
            answer.HingeDistanceMm = plane.HingeMm;
        }

        if (outcome.Setting is { } nearest)
        {
            answer.Nearest = Setting(request, nearest, zone, "not_reached.nearest.", ref trail);
        }

        return answer;
    }

    private static TiltSolution Setting<TTrail>(
        SolveTiltRequest request, TiltSetting setting, (double FNumber, double BlurMm)? zone, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var answer = new TiltSolution
        {
            TiltDeg = setting.TiltDeg,
            LensToSensorMm = setting.LensToSensorMm,
            PlaneToSensorDeg = setting.PlaneToSensorDeg,
        };
        if (setting.Plane.PerCrossing > 0)
        {
            answer.AxisCrossingMm = setting.Plane.CrossingMm;
        }

        if (setting.Plane.IsParallel)
        {
            return answer;
        }

        answer.HingeDistanceMm = setting.Plane.HingeMm;
        if (zone is not var (fNumber, blurMm))
        {
            return answer;
        }

        IEnumerable<double> distances = request.WedgeDistancesMm.Count > 0 ? request.WedgeDistancesMm
            : answer.HasAxisCrossingMm ? [answer.AxisCrossingMm]
            : [];
        foreach (var distance in distances)
        {
            answer.Wedge.Add(new WedgeHeight
            {
                DistanceMm = distance,
                HalfHeightMm = setting.WedgeHalfHeightMm(
                    request.FocalLengthMm, distance, fNumber, blurMm, ref trail, $"{field}wedge[{answer.Wedge.Count}].half_height_mm"),
            });
        }

        return answer;
    }

    private static (double FNumber, double BlurMm)? ReadWedge<TTrail>(
        RequestContext context, SolveTiltRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var sensor = context.ReadSensor(request.Sensor, TiltRoot[SolveTiltRequest.SensorFieldNumber]);
        var isWanted = request.Aperture is not null || request.PermittedBlur is not null || request.WedgeDistancesMm.Count > 0;
        double? blur = null;
        double? set = null;
        if (request.PermittedBlur is not null)
        {
            blur = context.ReadBlurMm(request.PermittedBlur, sensor, TiltRoot[SolveTiltRequest.PermittedBlurFieldNumber], ref trail);
        }
        else if (isWanted)
        {
            context.Violations.Add(TiltRoot[SolveTiltRequest.PermittedBlurFieldNumber].ToString(), RefusalReason.Required,
                "The wedge needs the permitted blur.");
        }

        if (request.Aperture is not null)
        {
            set = context.Read(request.Aperture, TiltRoot[SolveTiltRequest.ApertureFieldNumber]);
        }
        else if (isWanted)
        {
            context.Violations.Add(TiltRoot[SolveTiltRequest.ApertureFieldNumber].ToString(), RefusalReason.Required,
                "The wedge needs the aperture.");
        }

        return set is { } fNumber && blur is { } blurMm ? (fNumber, blurMm) : null;
    }

    private static void CheckPoints(RequestContext context, SolveTiltRequest request)
    {
        if (request.Points is not { } points)
        {
            return;
        }

        var path = TiltRoot[SolveTiltRequest.PointsFieldNumber][TwoPoints.FarFieldNumber];
        if (points.Far.DistanceMm < points.Near.DistanceMm)
        {
            context.Violations.Add(path[AxialPoint.DistanceMmFieldNumber].ToString(), RefusalReason.Conflict,
                "Must not be nearer than the nearer point.");
        }
        else if (points.Far.Equals(points.Near))
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict, "Must be another point than the nearer one.");
        }
    }

    private static (double X, double Y) At(AxialPoint point) => (point.DistanceMm, point.HeightMm);
}

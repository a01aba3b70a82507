using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>PlanFocusStack.</content>
public sealed partial class DepthOfFieldAdapter
{
    private const double FoodKeepsStillS = 20;

    private static readonly FieldPath StackRoot = FieldPath.Root(PlanFocusStackRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<PlanFocusStackResponse> PlanFocusStack(PlanFocusStackRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(PlanStack(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = PlanStack(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static PlanFocusStackResponse PlanStack<TTrail>(PlanFocusStackRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var input = ReadStack(context, request, ref trail);
        var times = ReadTimes(context, request);
        context.ThrowIfRefused();

        var outcome = StackOutcome.Plan(input!, times, ref trail);
        var response = new PlanFocusStackResponse { ModelRevision = ModelRevision.Current };
        if (outcome.Obstacle is null)
        {
            response.Solution = StackWriter.Stack(context, input!, outcome);
        }
        else
        {
            response.NotReached = StackWriter.NotReached(context, input!, times, WavelengthOf(request), outcome);
        }

        if (outcome.Obstacle != Maths.StackObstacle.Diffraction)
        {
            context.NoteDiffraction(
                input!.Lens, input.FNumber, input.PermittedBlurMm, WavelengthOf(request),
                StackRoot[PlanFocusStackRequest.ApertureFieldNumber].ToString());
        }

        if (input!.Method == Maths.StackMethod.FocusingRail && outcome.TravelMm > 0)
        {
            context.Advisories.Add(Advise.RailMovesViewpoint(outcome.TravelMm));
        }

        if (outcome.TimeS is { } time and > FoodKeepsStillS)
        {
            context.Advisories.Add(Advise.FoodMovesInStack(time));
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static StackInput? ReadStack<TTrail>(RequestContext context, PlanFocusStackRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var cameraPath = StackRoot[PlanFocusStackRequest.CameraFieldNumber];
        var optics = context.Read(request.Camera, cameraPath, ref trail);
        var blur = context.ReadBlurMm(
            request.PermittedBlur, optics?.Sensor, StackRoot[PlanFocusStackRequest.PermittedBlurFieldNumber], ref trail);
        var set = context.ReadSetFNumber(
            request.Aperture, optics?.Lens, StackRoot[PlanFocusStackRequest.ApertureFieldNumber], ref trail, setField: "");
        context.RefuseInfinity(optics?.Lens, cameraPath[FocusedCamera.ClosenessFieldNumber]);
        return optics is null || set is null || blur is null || optics.Lens.IsAtInfinity
            ? null
            : new(
                optics.Lens,
                set.Value,
                blur.Value,
                request.DepthMm,
                request.HasOverlapShare ? request.OverlapShare : StackInput.UsualOverlapShare,
                request.Method == V1.StackMethod.FocusingRail ? Maths.StackMethod.FocusingRail : Maths.StackMethod.FocusRing)
            {
                WavelengthUm = request.DefocusOnly ? null : WavelengthOf(request),
            };
    }

    private static double WavelengthOf(PlanFocusStackRequest request) => request.HasWavelengthUm ? request.WavelengthUm : DefaultWavelengthUm;


    private static StackTimes? ReadTimes(RequestContext context, PlanFocusStackRequest request)
    {
        if (request.RecycleTime is null && request.SettleTime is null)
        {
            if (request.AvailableTime is not null)
            {
                context.Violations.Add(StackRoot[PlanFocusStackRequest.RecycleTimeFieldNumber].ToString(), RefusalReason.Required,
                    "An available time needs the recycle time or the settle time.");
            }

            return null;
        }

        return new(
            Seconds(request.RecycleTime) ?? 0,
            Seconds(request.SettleTime) ?? 0,
            Seconds(request.AvailableTime));
    }

    private static double? Seconds(Duration? time) => time is null ? null : time.Seconds + time.Nanos / 1e9;
}

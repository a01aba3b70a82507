using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>FreezeMotion.</content>
public sealed partial class ExposureAdapter
{
    private const double CutOffWorthSayingStops = 0.1;
    private const double BlurRounding = 1e-9;

    private static readonly FieldPath FreezeRoot = FieldPath.Root(FreezeMotionRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<FreezeMotionResponse> FreezeMotion(FreezeMotionRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Freeze(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Freeze(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static FreezeMotionResponse Freeze<TTrail>(FreezeMotionRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.Camera is { HasScale: true } camera ? camera.Scale : null);
        var limits = context.ReadLimits(request.Camera, FreezeRoot[FreezeMotionRequest.CameraFieldNumber]);
        var shutter = request.ShutterSpeed is null
            ? null
            : context.Read(request.ShutterSpeed, FreezeRoot[FreezeMotionRequest.ShutterSpeedFieldNumber]);
        CheckFlashDuration(context, request);
        context.ThrowIfRefused();

        var response = new FreezeMotionResponse { ModelRevision = ModelRevision.Current };
        trail.Section("motion");
        var motion = request.Motion;
        var across = MotionBlur.AcrossMPerS(motion.SpeedMPerS, motion.AngleDeg, ref trail);
        if (MotionBlur.LongestExposureS(motion.PermittedBlurUm, motion.Magnification, across, ref trail, "longest_exposure_s") is { } longest)
        {
            response.LongestExposureS = longest;
            var slowest = Math.Min(longest, limits!.SlowestShutterSpeedS);
            if (ShutterMarks.Slowest(context.Scale, limits.FastestShutterSpeedS, slowest) is { } mark)
            {
                response.SlowestShutterSpeed = CameraWriter.ShutterSpeed(mark, context.Scale);
            }
        }

        if (shutter is { } time)
        {
            trail.Section("shutter");
            response.ShutterBlurUm = MotionBlur.BlurUm(time, motion.Magnification, across, ref trail, "shutter_blur_um");
            CheckBlur(context, request, response.ShutterBlurUm, FreezeMotionRequest.ShutterSpeedFieldNumber);
        }

        if (request.HasFlashDurationS)
        {
            Flash(context, request, shutter, across, response, ref trail);
        }

        trail.Section("camera shake");
        response.CameraShakeFactor = CameraShake.Factor(motion.Magnification, ref trail);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void Flash<TTrail>(
        RequestContext context, FreezeMotionRequest request, double? shutterS, double across, FreezeMotionResponse response, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (request.FlashDurationKind != FlashDurationKind.T01)
        {
            context.Advisories.Add(Advise.FlashBlurUnknown(FreezeRoot[FreezeMotionRequest.FlashDurationSFieldNumber]));
            return;
        }

        trail.Section("flash");
        response.FlashBlurUm = MotionBlur.BlurUm(request.FlashDurationS, request.Motion.Magnification, across, ref trail, "flash_blur_um");
        CheckBlur(context, request, response.FlashBlurUm, FreezeMotionRequest.FlashDurationSFieldNumber);
        if (shutterS is { } shutter)
        {
            response.FlashCutOffStops = FlashDuration.CutOffStops(shutter, request.FlashDurationS, ref trail);
            if (response.FlashCutOffStops > CutOffWorthSayingStops)
            {
                context.Advisories.Add(Advise.FlashCutOff(response.FlashCutOffStops));
            }
        }
    }

    private static void CheckBlur(RequestContext context, FreezeMotionRequest request, double blurUm, int fieldNumber)
    {
        var permitted = request.Motion.PermittedBlurUm;
        if (blurUm > permitted * (1 + BlurRounding))
        {
            context.Advisories.Add(Advise.BlurBeyondPermitted(FreezeRoot[fieldNumber], blurUm, permitted));
        }
    }

    private static void CheckFlashDuration(RequestContext context, FreezeMotionRequest request)
    {
        var kind = FreezeRoot[FreezeMotionRequest.FlashDurationKindFieldNumber].ToString();
        if (request.HasFlashDurationS && !request.HasFlashDurationKind)
        {
            context.Violations.Add(kind, RefusalReason.Required, "Say whether the flash duration is t0.5 or t0.1.");
        }
        else if (request.HasFlashDurationKind && !request.HasFlashDurationS)
        {
            context.Violations.Add(kind, RefusalReason.Conflict, "Belongs to a flash duration; leave it out without one.");
        }
    }
}

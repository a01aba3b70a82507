using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateDepthOfField.</content>
public sealed partial class DepthOfFieldAdapter
{
    private static readonly FieldPath EvaluateRoot = FieldPath.Root(EvaluateDepthOfFieldRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateDepthOfFieldResponse> EvaluateDepthOfField(
        EvaluateDepthOfFieldRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Evaluate(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Evaluate(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EvaluateDepthOfFieldResponse Evaluate<TTrail>(EvaluateDepthOfFieldRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var optics = context.Read(request.Camera, EvaluateRoot[EvaluateDepthOfFieldRequest.CameraFieldNumber], ref trail);
        var blurPath = EvaluateRoot[EvaluateDepthOfFieldRequest.PermittedBlurFieldNumber];
        var blur = optics is null ? null : context.ReadBlurMm(request.PermittedBlur, optics.Sensor, blurPath, ref trail);
        var set = context.ReadSetFNumber(
            request.Aperture, optics?.Lens, EvaluateRoot[EvaluateDepthOfFieldRequest.ApertureFieldNumber], ref trail);
        CheckOffsets(context, request, optics?.Lens);
        context.ThrowIfRefused();

        var (lens, sensor) = optics!;
        var (fNumber, blurMm) = (set!.Value, blur!.Value);
        trail.Section("sharp zone");
        var zone = Maths.SharpZone.Evaluate(lens, fNumber, blurMm, ref trail, "zone.");
        var response = new EvaluateDepthOfFieldResponse
        {
            Zone = OpticsWriter.Zone(lens, zone),
            Focus = OpticsWriter.Lens(lens, sensor),
            Aperture = CameraWriter.Aperture(fNumber, context.Scale),
            PermittedBlurUm = blurMm * 1000,
            HyperfocalMm = Maths.SharpZone.HyperfocalMm(lens.FocalLengthMm, fNumber, blurMm, ref trail),
            InfinityBlurUm = Maths.PointBlur.AtInfinityMm(lens, fNumber) * 1000,
            ModelRevision = ModelRevision.Current,
        };
        Diffract(context, request, lens, fNumber, blurMm, response, ref trail);
        response.Points.Add(request.OffsetsMm.Select(offset => Point(lens, sensor, fNumber, blurMm, response.AiryDiscUm, offset)));
        context.NoteFineBlur(blurMm, sensor, blurPath);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void Diffract<TTrail>(
        RequestContext context,
        EvaluateDepthOfFieldRequest request,
        LensFocus lens,
        double fNumber,
        double blurMm,
        EvaluateDepthOfFieldResponse response,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("diffraction");
        var wavelength = request.HasWavelengthUm ? request.WavelengthUm : DefaultWavelengthUm;
        response.EffectiveFNumber = Maths.SharpZone.EffectiveFNumber(lens, fNumber, ref trail, "effective_f_number");
        response.AiryDiscUm = Diffraction.AiryDiscUm(response.EffectiveFNumber, wavelength, ref trail, "airy_disc_um");
        response.ResolvedPerMm = Diffraction.ResolvedPerMm(response.AiryDiscUm, ref trail);
        if (!lens.IsAtInfinity)
        {
            response.WaveOpticsDepthMm = Diffraction.WaveOpticsDepthMm(
                response.EffectiveFNumber, lens.Magnification, wavelength, ref trail);
        }

        context.NoteDiffraction(response.AiryDiscUm, blurMm);
        if (Diffraction.LeftForDefocus(blurMm, response.AiryDiscUm / 1000) is { } left)
        {
            response.ZoneWithDiffraction = OpticsWriter.Zone(lens, Maths.SharpZone.Evaluate(lens, fNumber, left));
        }
    }

    private static V1.PointBlur Point(
        LensFocus lens, SensorRead? sensor, double fNumber, double blurMm, double airyDiscUm, double offsetMm)
    {
        var blur = Maths.PointBlur.DiameterMm(lens, fNumber, offsetMm);
        var point = new V1.PointBlur
        {
            OffsetMm = offsetMm,
            BlurUm = blur * 1000,
            BlurWithDiffractionUm = Diffraction.Together(blur * 1000, airyDiscUm),
            Sharp = blur <= blurMm,
        };
        if (sensor is not null)
        {
            point.ShareOfFrameHeight = blur / sensor.HeightMm;
        }

        return point;
    }

    private static void CheckOffsets(RequestContext context, EvaluateDepthOfFieldRequest request, LensFocus? lens)
    {
        for (var i = 0; lens is not null && i < request.OffsetsMm.Count; i++)
        {
            if (lens.IsAtInfinity || lens.FromEntrancePupilMm + request.OffsetsMm[i] <= 0)
            {
                context.Violations.Add(
                    EvaluateRoot[EvaluateDepthOfFieldRequest.OffsetsMmFieldNumber].ItemAt(i), RefusalReason.OutOfRange,
                    lens.IsAtInfinity
                        ? "With focus at infinity points have no distance from the focused plane."
                        : FormattableString.Invariant(
                            $"The point must lie before the lens: beyond {-lens.FromEntrancePupilMm:0.#} mm, where the entrance pupil stands."));
            }
        }
    }
}

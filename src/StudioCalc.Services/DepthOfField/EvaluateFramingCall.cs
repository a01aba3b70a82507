using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateFraming.</content>
public sealed partial class DepthOfFieldAdapter
{
    private static readonly FieldPath FramingRoot = FieldPath.Root(EvaluateFramingRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateFramingResponse> EvaluateFraming(EvaluateFramingRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Frame(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Frame(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EvaluateFramingResponse Frame<TTrail>(EvaluateFramingRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var cameraPath = FramingRoot[EvaluateFramingRequest.CameraFieldNumber];
        var optics = context.Read(request.Camera, cameraPath, ref trail);
        CheckFraming(context, request, optics?.Lens, cameraPath);
        context.ThrowIfRefused();

        var (lens, sensor) = (optics!.Lens, optics.Sensor!);
        var response = new EvaluateFramingResponse
        {
            Focus = OpticsWriter.Lens(lens, sensor),
            ModelRevision = ModelRevision.Current,
        };
        Place(context, request, lens, sensor, response, ref trail);
        for (var i = 0; i < request.Crops.Count; i++)
        {
            trail.Section($"crop {i + 1}");
            response.Crops.Add(Crop(lens, sensor, request.Crops[i], $"crops[{i}].", ref trail));
        }

        // Last, so that the working ends with an answer.
        trail.Section("angles of view");
        var angles = Framing.AnglesOfView(lens, sensor.WidthMm, sensor.HeightMm, ref trail);
        (response.HorizontalAngleDeg, response.VerticalAngleDeg, response.DiagonalAngleDeg) =
            (angles.HorizontalDeg, angles.VerticalDeg, angles.DiagonalDeg);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void Place<TTrail>(
        RequestContext context,
        EvaluateFramingRequest request,
        LensFocus lens,
        SensorRead sensor,
        EvaluateFramingResponse response,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("distances");
        if (request.HasLensFrontToSensorMm)
        {
            response.WorkingDistanceMm = Framing.WorkingDistanceMm(lens, request.LensFrontToSensorMm, ref trail);
            if (response.WorkingDistanceMm <= 0)
            {
                context.Advisories.Add(Advise.LensReachesSubject(response.WorkingDistanceMm));
            }
        }

        if (request.HasFarBehindMm)
        {
            response.NearToFarSize = Framing.NearToFarSize(lens, request.FarBehindMm, ref trail);
        }

        if (request.HasFillWidthMm)
        {
            response.FillingFocalLengthMm = Framing.FillingFocalLengthMm(lens, sensor.WidthMm, request.FillWidthMm, ref trail);
        }

        if (request.HasWantedMagnification)
        {
            response.ExtensionMm = Framing.ExtensionMm(lens, request.WantedMagnification, ref trail);
        }
    }

    private static CropAnswer Crop<TTrail>(
        LensFocus lens, SensorRead sensor, DeliveryCrop wanted, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var crop = FrameCrop.Cut(sensor.WidthMm, sensor.HeightMm, wanted.Width, wanted.Height, ref trail, field);
        var answer = new CropAnswer { Name = wanted.Name, KeptShare = crop.KeptShare };
        if (!lens.IsAtInfinity)
        {
            answer.FieldWidthMm = crop.WidthMm / lens.Magnification;
            answer.FieldHeightMm = crop.HeightMm / lens.Magnification;
        }

        if (sensor.LongSidePixels is not { } pixels)
        {
            return answer;
        }

        var perMm = pixels / sensor.LongSideMm;
        answer.PixelsWide = (uint)FrameCrop.PixelsAlong(crop.WidthMm, perMm);
        answer.PixelsHigh = (uint)FrameCrop.PixelsAlong(crop.HeightMm, perMm);
        if (wanted.HasPrintWidthMm)
        {
            answer.PrintPixelsPerMm = answer.PixelsWide / wanted.PrintWidthMm;
        }

        if (wanted.HasPixelsWide)
        {
            answer.OneFrameIsEnough = answer.PixelsWide >= wanted.PixelsWide;
        }

        return answer;
    }

    private static void CheckFraming(RequestContext context, EvaluateFramingRequest request, LensFocus? lens, FieldPath cameraPath)
    {
        if (request.Camera.Sensor is null)
        {
            context.Violations.Add(cameraPath[FocusedCamera.SensorFieldNumber].ToString(), RefusalReason.Required,
                "Framing needs the size of the sensor.");
        }

        if (lens is not { IsAtInfinity: true })
        {
            return;
        }

        Refuse(request.HasLensFrontToSensorMm, EvaluateFramingRequest.LensFrontToSensorMmFieldNumber);
        Refuse(request.HasFarBehindMm, EvaluateFramingRequest.FarBehindMmFieldNumber);
        Refuse(request.HasFillWidthMm, EvaluateFramingRequest.FillWidthMmFieldNumber);

        void Refuse(bool isSet, int field)
        {
            if (isSet)
            {
                context.Violations.Add(FramingRoot[field].ToString(), RefusalReason.Conflict,
                    "With focus at infinity there is no distance to the focused plane; leave it out.");
            }
        }
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Answers the calls of <c>ExposureService</c>.</summary>
public sealed partial class ExposureAdapter : ExposureService.ExposureServiceBase
{
    private static readonly FieldPath Root = FieldPath.Root(EvaluateExposureRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateExposureResponse> EvaluateExposure(EvaluateExposureRequest request, ServerCallContext context)
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

    private static EvaluateExposureResponse Evaluate<TTrail>(EvaluateExposureRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        if (request.Settings is null && request.Light is null)
        {
            context.Violations.Add(
                Root[EvaluateExposureRequest.SettingsFieldNumber].ToString(), RefusalReason.Required, "Give settings, a light, or both.");
        }

        var response = new EvaluateExposureResponse { ModelRevision = ModelRevision.Current };
        Maths.CameraSettings? settings = null;
        if (request.Settings is not null)
        {
            settings = context.Read(request.Settings, Root[EvaluateExposureRequest.SettingsFieldNumber]);
        }

        if (settings is { } known)
        {
            response.Settings = Settings(request, known, context, ref trail);
        }

        if (request.Light?.Continuous is { } continuous)
        {
            Continuous(continuous, settings, request.LensLossStops, response, context, ref trail);
        }
        else if (request.Light?.Flash is { } flash)
        {
            Flash(flash, settings, request.LensLossStops, response, context, ref trail);
        }

        context.ThrowIfRefused();
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static V1.SettingsExposure Settings<TTrail>(
        EvaluateExposureRequest request, Maths.CameraSettings settings, RequestContext context, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("settings");
        var reflected = request.HasReflectedConstant ? request.ReflectedConstant : Maths.Receptor.Reflected.Default();
        var incident = request.HasIncidentConstant ? request.IncidentConstant : Maths.Receptor.Flat.Default();
        var exposure = Maths.SettingsExposure.Evaluate(settings, reflected, incident, ref trail);
        trail.Section("sensor");
        var factor = SensorReader.LensFactor(context, request, ref trail);
        var sensor = Maths.SensorExposure.Evaluate(settings, exposure.LuminanceCdPerM2, factor, ref trail);
        return new()
        {
            Aperture = CameraWriter.Aperture(settings.FNumber, context.Scale),
            ShutterSpeed = CameraWriter.ShutterSpeed(settings.ShutterSpeedS, context.Scale),
            Iso = CameraWriter.Iso(settings.Iso, context.Scale),
            ExposureValueStops = exposure.ExposureValueStops,
            ExposureValueIso100Stops = exposure.Suits.ExposureValueIso100Stops,
            LuminanceCdPerM2 = exposure.LuminanceCdPerM2,
            IlluminanceLx = exposure.IlluminanceLx,
            ReflectedConstant = reflected,
            IncidentConstant = incident,
            ApertureValueStops = exposure.ApertureValueStops,
            TimeValueStops = exposure.TimeValueStops,
            SpeedValueStops = exposure.SpeedValueStops,
            BrightnessValueStops = exposure.BrightnessValueStops,
            MeterReflectance = exposure.MeterReflectance,
            Sensor = new()
            {
                FocalPlaneExposureLxS = sensor.ExposureLxS,
                LensFactor = factor,
                ExposureIndex = sensor.ExposureIndex,
                SaturationExposureLxS = sensor.SaturationLxS,
                SaturationLuminanceCdPerM2 = sensor.SaturationCdPerM2,
            },
        };
    }

    private static void Continuous<TTrail>(
        ContinuousReading reading,
        Maths.CameraSettings? settings,
        double lensLossStops,
        EvaluateExposureResponse response,
        RequestContext context,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("light");
        var path = Root[EvaluateExposureRequest.LightFieldNumber][Reading.ContinuousFieldNumber];
        if (context.Read(reading, path, ref trail, "light.exposure_value_iso100_stops") is not { } light)
        {
            return;
        }

        response.Light = new()
        {
            ExposureValueIso100Stops = light.Level.ExposureValueIso100Stops,
            Receptor = light.Receptor.ToContract(),
            CalibrationConstant = light.Constant,
        };
        if (settings is { } known)
        {
            trail.Section("light over setting");
            response.Light.ExposureValueAtIsoStops = light.Level.ExposureValueAtIsoStops(known.Iso);
            response.LightOverSettingStops = light.Level.StopsOver(known, lensLossStops, ref trail);
        }
    }

    private static void Flash<TTrail>(
        FlashReading reading,
        Maths.CameraSettings? settings,
        double lensLossStops,
        EvaluateExposureResponse response,
        RequestContext context,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("light");
        var path = Root[EvaluateExposureRequest.LightFieldNumber][Reading.FlashFieldNumber];
        if (context.Read(reading, path, ref trail, "light.flash_value_iso100_stops") is not { } light)
        {
            return;
        }

        response.Light = new()
        {
            FlashValueIso100Stops = light.Level.FlashValueIso100Stops,
            FlashAperture = CameraWriter.Aperture(light.Level.FNumberAt(settings?.Iso ?? 100), context.Scale),
            Receptor = light.Receptor.ToContract(),
            CalibrationConstant = light.Constant,
        };
        if (settings is { } known)
        {
            trail.Section("light over setting");
            response.LightOverSettingStops = light.Level.StopsOver(known, lensLossStops, ref trail);
        }
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Evaluates headroom.</content>
public sealed partial class ExposureAdapter
{
    private static readonly FieldPath HeadroomRoot = FieldPath.Root(EvaluateHeadroomRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateHeadroomResponse> EvaluateHeadroom(EvaluateHeadroomRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        var gathered = new RequestContext(null);
        var input = ReadHeadroom(gathered, request);
        gathered.ThrowIfRefused();
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Write(input, Headroom.Evaluate(input, ref none)));
        }

        var trail = StepTrail.Start();
        var response = Write(input, Headroom.Evaluate(input, ref trail));
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static HeadroomInput ReadHeadroom(RequestContext context, EvaluateHeadroomRequest request)
    {
        var definition = request.HasDefinition ? ToMaths(request.Definition)
            : request.HasMeasuredHeadroomStops ? Maths.HeadroomDefinition.Measured
            : Maths.HeadroomDefinition.SaturationSpeed;
        var isMeasured = definition == Maths.HeadroomDefinition.Measured;
        if (isMeasured && !request.HasMeasuredHeadroomStops)
        {
            context.Violations.Add(
                HeadroomRoot[EvaluateHeadroomRequest.MeasuredHeadroomStopsFieldNumber].ToString(),
                RefusalReason.Required,
                "Must be given with the measured definition.");
        }

        const string measured = "Belongs to the measured definition.";
        Conflict(context, !isMeasured && request.HasMeasuredHeadroomStops, EvaluateHeadroomRequest.MeasuredHeadroomStopsFieldNumber, measured);
        const string meter = "Belongs to the meter's definition.";
        var isMeter = definition == Maths.HeadroomDefinition.Meter;
        Conflict(context, !isMeter && request.HasReflectedConstant, EvaluateHeadroomRequest.ReflectedConstantFieldNumber, meter);
        Conflict(context, !isMeter && request.HasIncidentConstant, EvaluateHeadroomRequest.IncidentConstantFieldNumber, meter);
        Conflict(context, !isMeter && request.HasLensFactor, EvaluateHeadroomRequest.LensFactorFieldNumber, meter);
        Conflict(
            context,
            isMeter && request.HasIncidentConstant && request.HasMidToneReflectance,
            EvaluateHeadroomRequest.IncidentConstantFieldNumber,
            "The mid-tone reflectance takes its place; leave one of them out.");
        var open = new HeadroomInput { Reflectance = request.Reflectance };
        return open with
        {
            LightOverSettingStops = request.LightOverSettingStops,
            Definition = definition,
            MeasuredHeadroomStops = request.MeasuredHeadroomStops,
            MidToneReflectance = request.HasMidToneReflectance ? request.MidToneReflectance : null,
            ReflectedConstant = request.HasReflectedConstant ? request.ReflectedConstant : open.ReflectedConstant,
            IncidentConstant = request.HasIncidentConstant ? request.IncidentConstant : open.IncidentConstant,
            LensFactor = request.HasLensFactor ? request.LensFactor : open.LensFactor,
        };
    }

    private static void Conflict(RequestContext context, bool isSet, int field, string description)
    {
        if (isSet)
        {
            context.Violations.Add(HeadroomRoot[field].ToString(), RefusalReason.Conflict, description);
        }
    }

    private static EvaluateHeadroomResponse Write(HeadroomInput input, Headroom headroom)
    {
        var response = new EvaluateHeadroomResponse
        {
            SurfaceOverMidToneStops = headroom.SurfaceOverMidToneStops,
            HeadroomStops = headroom.HeadroomStops,
            Definition = ToContract(input.Definition),
            LeftStops = headroom.LeftStops,
            MidToneReflectance = headroom.MidToneReflectance,
            ShareOfClipping = headroom.ShareOfClipping,
            ModelRevision = ModelRevision.Current,
        };
        if (headroom.LeftStops < 0)
        {
            response.Advisories.Add(Advise.SurfaceClips(headroom.LeftStops));
        }

        if (input.Definition != Maths.HeadroomDefinition.Measured)
        {
            response.Advisories.Add(Advise.HeadroomByDefinition());
        }

        return response;
    }

    private static Maths.HeadroomDefinition ToMaths(V1.HeadroomDefinition definition) => definition switch
    {
        V1.HeadroomDefinition.SaturationSpeed => Maths.HeadroomDefinition.SaturationSpeed,
        V1.HeadroomDefinition.Meter => Maths.HeadroomDefinition.Meter,
        V1.HeadroomDefinition.Measured => Maths.HeadroomDefinition.Measured,
        V1.HeadroomDefinition.DiffuseWhite => Maths.HeadroomDefinition.DiffuseWhite,
        _ => throw new ArgumentOutOfRangeException(nameof(definition)),
    };

    private static V1.HeadroomDefinition ToContract(Maths.HeadroomDefinition definition) => definition switch
    {
        Maths.HeadroomDefinition.SaturationSpeed => V1.HeadroomDefinition.SaturationSpeed,
        Maths.HeadroomDefinition.Meter => V1.HeadroomDefinition.Meter,
        Maths.HeadroomDefinition.Measured => V1.HeadroomDefinition.Measured,
        Maths.HeadroomDefinition.DiffuseWhite => V1.HeadroomDefinition.DiffuseWhite,
        _ => throw new ArgumentOutOfRangeException(nameof(definition)),
    };
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads a solve request as the maths' input, with the rules that hold between its fields.</summary>
internal static class SolveExposureReader
{
    private const double Rounding = 1e-9;
    private const string BeyondLimits = "Lies beyond what the camera of this request can be set to.";

    private static readonly FieldPath Root = FieldPath.Root(SolveExposureRequest.Descriptor);
    private static readonly FieldPath AperturePath = Root[SolveExposureRequest.ApertureFieldNumber];
    private static readonly FieldPath SpeedPath = Root[SolveExposureRequest.ShutterSpeedFieldNumber];
    private static readonly FieldPath IsoPath = Root[SolveExposureRequest.IsoFieldNumber];

    /// <summary>Reads the request, or returns null after noting every bad field.</summary>
    public static ExposureInput? Read<TTrail>(RequestContext context, SolveExposureRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("light");
        var light = context.Read(request.Light, Root[SolveExposureRequest.LightFieldNumber], ref trail);
        trail.Section("filters");
        var filters = LossReader.ReadLossStops(request.LensFilters, ref trail);
        trail.Section("close focus");
        var closeUp = context.Read(request.CloseUp, Root[SolveExposureRequest.CloseUpFieldNumber], ref trail);
        var limits = context.ReadLimits(request.Camera, Root[SolveExposureRequest.CameraFieldNumber]);
        var aperture = request.Aperture is null ? null : context.Read(request.Aperture, AperturePath);
        var speed = request.ShutterSpeed is null ? null : context.Read(request.ShutterSpeed, SpeedPath);
        var iso = request.Iso is null ? null : context.Read(request.Iso, IsoPath);
        var unknown = Unknown(context, request);
        if (limits is not null)
        {
            Within(context, aperture, limits.WidestFNumber, limits.SmallestFNumber, AperturePath);
            Within(context, speed, limits.FastestShutterSpeedS, limits.SlowestShutterSpeedS, SpeedPath);
            Within(context, iso, limits.LowestIso, limits.HighestIso, IsoPath);
        }

        if (light is not { } read || context.Violations.Any)
        {
            return null;
        }

        if (read.Receptor == Maths.Receptor.Reflected && filters + closeUp != 0)
        {
            context.Advisories.Add(Advise.LossReadThroughLens((filters + closeUp)!.Value));
        }

        return new()
        {
            Light = read.Level,
            Unknown = unknown,
            FNumber = aperture ?? 1,
            ShutterSpeedS = speed ?? 1,
            Iso = iso ?? 100,
            CompensationStops = request.CompensationStops,
            FilterLossStops = filters,
            CloseUpLossStops = closeUp!.Value,
            Scale = context.Scale,
            Limits = limits!,
        };
    }

    private static ExposureUnknown Unknown(RequestContext context, SolveExposureRequest request)
    {
        switch (request.Aperture is null, request.ShutterSpeed is null, request.Iso is null)
        {
            case (true, false, false):
                return ExposureUnknown.Aperture;
            case (false, true, false):
                return ExposureUnknown.ShutterSpeed;
            case (false, false, true):
                return ExposureUnknown.Iso;
            case (false, false, false):
                context.Violations.Add(AperturePath.ToString(), RefusalReason.Conflict,
                    "Leave out the one of aperture, shutter speed and ISO that is solved for.");
                return default;
            default:
                Missing(context, request.Aperture is null, AperturePath);
                Missing(context, request.ShutterSpeed is null, SpeedPath);
                Missing(context, request.Iso is null, IsoPath);
                return default;
        }
    }

    private static void Missing(RequestContext context, bool isMissing, FieldPath path)
    {
        if (isMissing)
        {
            context.Violations.Add(path.ToString(), RefusalReason.Required, "Give two of aperture, shutter speed and ISO; the third is solved for.");
        }
    }

    private static void Within(RequestContext context, double? value, double lowest, double highest, FieldPath path)
    {
        if (value < lowest * (1 - Rounding) || value > highest * (1 + Rounding))
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict, BeyondLimits);
        }
    }
}

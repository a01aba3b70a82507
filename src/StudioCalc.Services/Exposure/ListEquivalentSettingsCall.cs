using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Lists settings of the same exposure.</content>
public sealed partial class ExposureAdapter
{
    private const int MostSettings = 500;

    private static readonly FieldPath ListRoot = FieldPath.Root(ListEquivalentSettingsRequest.Descriptor);
    private static readonly FieldPath ListCamera = ListRoot[ListEquivalentSettingsRequest.CameraFieldNumber];

    /// <inheritdoc/>
    public override Task<ListEquivalentSettingsResponse> ListEquivalentSettings(ListEquivalentSettingsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        var gathered = new RequestContext(request.Camera is { HasScale: true } ? request.Camera.Scale : null);
        var kept = gathered.Read(request.Settings, ListRoot[ListEquivalentSettingsRequest.SettingsFieldNumber]);
        var limits = gathered.ReadLimits(request.Camera, ListCamera);
        Needed(gathered, request.WithFlash && request.Camera?.SyncSpeed is null, Camera.SyncSpeedFieldNumber,
            "Must be given with flash, which does not cover the frame at every shutter speed.");
        Needed(gathered, request.VaryIso && request.Camera?.LowestIso is null, Camera.LowestIsoFieldNumber, "Must be given to vary the ISO.");
        Needed(gathered, request.VaryIso && request.Camera?.HighestIso is null, Camera.HighestIsoFieldNumber, "Must be given to vary the ISO.");
        gathered.ThrowIfRefused();

        var within = limits! with
        {
            SlowestShutterSpeedS = Math.Min(limits!.SlowestShutterSpeedS, LongestExposureS(request.Motion)),
            FastestShutterSpeedS = Math.Max(limits.FastestShutterSpeedS, request.WithFlash ? limits.SyncSpeedS!.Value : 0),
        };
        var all = Maths.EquivalentSettings.List(kept!.Value, within, request.VaryIso, gathered.Scale).ToList();
        var response = new ListEquivalentSettingsResponse
        {
            Settings = { all.Take(MostSettings).Select(one => Write(one, gathered.Scale)) },
            LeftOutCount = (uint)Math.Max(0, all.Count - MostSettings),
            ModelRevision = ModelRevision.Current,
        };
        if (Marks.ShutterSpeed.All(gathered.Scale).LastOrDefault(mark => mark.Value <= within.SlowestShutterSpeedS) is { } slowest
            && double.IsFinite(within.SlowestShutterSpeedS))
        {
            response.SlowestShutterSpeed = CameraWriter.ShutterSpeed(slowest.Value, gathered.Scale);
        }

        response.Advisories.Add(gathered.Advisories);
        if (response.LeftOutCount > 0)
        {
            response.Advisories.Add(Advise.ListCut((int)response.LeftOutCount));
        }

        return Task.FromResult(response);
    }

    private static double LongestExposureS(Motion? motion)
    {
        if (motion is null)
        {
            return double.PositiveInfinity;
        }

        var none = default(NoTrail);
        var across = MotionBlur.AcrossMPerS(motion.SpeedMPerS, motion.AngleDeg, ref none);
        return MotionBlur.LongestExposureS(motion.PermittedBlurUm, motion.Magnification, across, ref none) ?? double.PositiveInfinity;
    }

    private static void Needed(RequestContext context, bool isMissing, int cameraField, string description)
    {
        if (isMissing)
        {
            context.Violations.Add(ListCamera[cameraField].ToString(), RefusalReason.Required, description);
        }
    }

    private static V1.EquivalentSettings Write(Maths.EquivalentSettings one, Maths.StopScale scale) => new()
    {
        Aperture = CameraWriter.Aperture(one.Settings.FNumber, scale),
        ShutterSpeed = CameraWriter.ShutterSpeed(one.Settings.ShutterSpeedS, scale),
        Iso = CameraWriter.Iso(one.Settings.Iso, scale),
        RestStops = one.RestStops,
    };
}

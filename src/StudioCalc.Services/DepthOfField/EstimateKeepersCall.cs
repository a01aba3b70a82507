using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EstimateKeepers.</content>
public sealed partial class DepthOfFieldAdapter
{
    private const double BiasWorthSaying = 0.05;

    private static readonly FieldPath KeepersRoot = FieldPath.Root(EstimateKeepersRequest.Descriptor);
    private static readonly FieldPath SettingsPath = KeepersRoot[EstimateKeepersRequest.SettingsFieldNumber];

    /// <inheritdoc/>
    public override Task<EstimateKeepersResponse> EstimateKeepers(EstimateKeepersRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Keepers(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Keepers(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EstimateKeepersResponse Keepers<TTrail>(EstimateKeepersRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var optics = ReadKeeperOptics(context, request.Settings, ref trail);
        if (request.Depths is { FarCase: SharpDepths.FarOneofCase.FarIsInfinite, FarIsInfinite: false })
        {
            context.Violations.Add(
                KeepersRoot[EstimateKeepersRequest.DepthsFieldNumber][SharpDepths.FarIsInfiniteFieldNumber].ToString(),
                RefusalReason.Conflict, "Must be true; where the zone ends, give its depth.");
        }

        context.ThrowIfRefused();

        var (near, far) = Zone(request.Depths, optics, ref trail);
        trail.Section("spread of focus");
        var focus = request.FocusErrorCase == EstimateKeepersRequest.FocusErrorOneofCase.SpreadMm
            ? request.SpreadMm
            : FocusError.SpreadFromKeepRateMm(request.Observed.KeptShare, request.Observed.HalfDepthMm, ref trail);
        var input = new KeeperInput
        {
            NearMm = near,
            FarMm = far,
            Error = FocusError.Of(focus, request.CameraMovementMm, request.PlatePlacementMm, request.BiasMm, ref trail),
            Confidence = request.ConfidenceShare,
            Keepers = request.HasKeepersWanted ? (int)request.KeepersWanted : 1,
            FocusIsLocked = request.FocusIsLocked,
        };
        trail.Section("bracket");
        var bracket = KeepChance.BracketFrames(near, far, input.Error.SpreadMm, input.Confidence, ref trail);
        var estimate = KeeperEstimate.Of(input, ref trail);
        var response = new EstimateKeepersResponse
        {
            KeepChance = estimate.Chance.Keep,
            SpreadMm = input.Error.SpreadMm,
            NearDepthMm = near,
            ModelRevision = ModelRevision.Current,
        };
        if (double.IsFinite(far))
        {
            response.FarDepthMm = far;
        }

        if (bracket <= KeepChance.MostBracketFrames)
        {
            response.BracketFrames = (uint)bracket;
        }

        if (request.HasFrames)
        {
            response.ChanceOfFrames = estimate.ChanceOf(input, (int)request.Frames);
        }

        Result(context, input, optics, estimate, response);
        AdviseOnKeepers(context, input, optics, estimate);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void Result(
        RequestContext context, KeeperInput input, KeeperOptics? optics, KeeperEstimate estimate, EstimateKeepersResponse response)
    {
        if (estimate is { ForOne: { } one, ForWanted: { } wanted })
        {
            response.Solution = new() { FramesForOne = (uint)one, FramesForWanted = (uint)wanted };
            return;
        }

        response.NotReached = new()
        {
            ShortfallMm = estimate.LackingDepthMm(input),
            FocusIsLocked = input.FocusIsLocked,
            Remedies =
            {
                Maths.KeeperRemedy.For(input, optics, context.Scale, DefaultWavelengthUm).Select(remedy => Remedy(context, remedy)),
            },
        };
    }

    private static V1.KeeperRemedy Remedy(RequestContext context, Maths.KeeperRemedy remedy)
    {
        var answer = new V1.KeeperRemedy
        {
            Kind = remedy.Kind switch
            {
                Maths.KeeperRemedyKind.RefocusEachFrame => V1.KeeperRemedyKind.RefocusEachFrame,
                Maths.KeeperRemedyKind.CorrectBias => V1.KeeperRemedyKind.CorrectBias,
                Maths.KeeperRemedyKind.CloseAperture => V1.KeeperRemedyKind.CloseAperture,
                Maths.KeeperRemedyKind.FocusBracket => V1.KeeperRemedyKind.FocusBracket,
                _ => throw new ArgumentOutOfRangeException(nameof(remedy)),
            },
            KeepChance = remedy.Keep,
            FramesForWanted = (uint)remedy.Frames,
        };
        if (remedy.FNumber is { } fNumber)
        {
            answer.Aperture = CameraWriter.Aperture(fNumber, context.Scale);
        }

        return answer;
    }

    private static void AdviseOnKeepers(RequestContext context, KeeperInput input, KeeperOptics? optics, KeeperEstimate estimate)
    {
        if (input.FocusIsLocked)
        {
            context.Advisories.Add(Advise.FramesShareError(estimate.Chance.Keep));
        }

        var without = KeepChance.Of(input.NearMm, input.FarMm, input.Error with { BiasMm = 0 }).Keep;
        if (without - estimate.Chance.Keep > BiasWorthSaying)
        {
            context.Advisories.Add(Advise.BiasInEveryFrame(input.Error.BiasMm, without));
        }

        if (optics is not null)
        {
            context.NoteDiffraction(
                optics.Lens, optics.FNumber, optics.PermittedBlurMm, DefaultWavelengthUm,
                SettingsPath[ZoneSettings.ApertureFieldNumber].ToString());
        }
    }

    private static (double NearMm, double FarMm) Zone<TTrail>(SharpDepths? depths, KeeperOptics? optics, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (depths is not null)
        {
            return (depths.NearDepthMm, depths.HasFarDepthMm ? depths.FarDepthMm : double.PositiveInfinity);
        }

        trail.Section("sharp zone");
        var zone = Maths.SharpZone.Evaluate(optics!.Lens, optics.FNumber, optics.PermittedBlurMm, ref trail);
        return (zone.NearDepthMm, zone.FarDepthMm);
    }

    private static KeeperOptics? ReadKeeperOptics<TTrail>(RequestContext context, ZoneSettings? settings, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (settings is null)
        {
            return null;
        }

        var cameraPath = SettingsPath[ZoneSettings.CameraFieldNumber];
        var optics = context.Read(settings.Camera, cameraPath, ref trail);
        var blur = context.ReadBlurMm(
            settings.PermittedBlur, optics?.Sensor, SettingsPath[ZoneSettings.PermittedBlurFieldNumber], ref trail);
        var set = context.ReadSetFNumber(
            settings.Aperture, optics?.Lens, SettingsPath[ZoneSettings.ApertureFieldNumber], ref trail, setField: "");
        context.RefuseInfinity(optics?.Lens, cameraPath[FocusedCamera.ClosenessFieldNumber]);
        return optics is not null && blur is { } blurMm && set is { } fNumber && !optics.Lens.IsAtInfinity
            ? new(optics.Lens, fNumber, blurMm)
            : null;
    }
}

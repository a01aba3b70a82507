using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateBounce.</content>
public sealed partial class FillPlacementAdapter
{
    private const double AimMm = 1000;
    private const int PatchesToCompare = 4;

    private static readonly FieldPath BounceSources =
        FieldPath.Root(EvaluateBounceRequest.Descriptor)[EvaluateBounceRequest.SourcesFieldNumber];

    /// <inheritdoc/>
    public override Task<EvaluateBounceResponse> EvaluateBounce(EvaluateBounceRequest request, ServerCallContext context)
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

    private static EvaluateBounceResponse Evaluate<TTrail>(EvaluateBounceRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var read = BounceReader.Read(context, request, ref trail);
        var matt = read.IsMirror && request.Surface.CoveredReflectance == 0 ? null : BounceLight.Matt(read.Surface, read.Lights, read.Receiver);
        var unitLight = read.IsMirror ? BounceLight.Mirror(read.Surface, read.Lights, read.Receiver) : matt!.Light;
        var response = new EvaluateBounceResponse { Patches = read.IsMirror ? 0 : (uint)matt!.Patches, ModelRevision = ModelRevision.Current };

        trail.Section("bounce");
        var bounced = Bounced(response, read, unitLight, read.IsMirror ? 0 : matt!.Residual, ref trail);
        if (BounceOutcome.OverDirectStops(bounced, Sum(read, read.Direct), read.Unit, ref trail) is { } over)
        {
            response.BouncedOverDirectStops = over;
        }

        var direct = request.DirectLightBlocked ? 0 : Sum(read, read.Receiver);
        var covered = request.Surface.CoveredReflectance * (matt?.Light ?? 0);
        if (BounceOutcome.ChangeStops(bounced, direct, covered, read.Unit, ref trail) is { } change)
        {
            response.ChangeStops = change;
        }

        if (!read.IsMirror && read.Lights.Count == 1 && bounced > 0
            && BounceOutcome.FarEstimate(read.Surface, read.Lights[0].Face, read.Lights[0].Strength, read.Reflectance, read.Receiver) is { } far)
        {
            response.FarEstimateOverstatesStops = Math.Log2(far / bounced);
        }

        var factor = read.Surface.Face.IsBefore(read.Receiver.Place)
            ? PolygonLight.Factor(read.Surface.Face.Corners, read.Receiver.Place, read.Receiver.Normal)
            : 0;
        response.ConfigurationFactor = trail.Given("F", factor, "", "fill placement (1), of the surface", "configuration_factor");
        response.Best = Best(read, request.Surface.Pose.RollDeg, unitLight);
        NoteBounce(context, request, read);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static double Bounced<TTrail>(
        EvaluateBounceResponse response, BounceRead read, double unitLight, double residual, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        switch (read.Sources[0].Level)
        {
            case null:
                return BounceOutcome.Bounced(unitLight, residual, read.Reflectance, "", ref trail);
            case { IsFlash: true }:
                return response.ExposureLxS = BounceOutcome.Bounced(unitLight, residual, read.Reflectance, "lx s", ref trail, "exposure_lx_s");
            default:
                return response.IlluminanceLx = BounceOutcome.Bounced(unitLight, residual, read.Reflectance, "lx", ref trail, "illuminance_lx");
        }
    }

    private static double Sum(BounceRead read, LightPoint at) => read.Lights.Sum(light => light.Strength * light.Face.Light(at));

    // The surface turned in its place. The way it faces, and the ways midway between each source and the receiver, are tried first.
    private static BestBounce? Best(BounceRead read, double rollDeg, double unitLight)
    {
        var centre = read.Surface.Axes.Centre;
        var candidates = read.Lights.Select(light => Towards(light.Face.Axes.Centre) + Towards(read.Receiver.Place)).Prepend(read.Surface.Axes.Facing);
        var rough = read.Lights.Select(light => (light.Face.Thinned(), light.Strength)).ToList();
        if (BounceAim.Find(Rough, candidates) is not { } facing)
        {
            return null;
        }

        var turned = read.Surface.Turned(facing, rollDeg);
        var light = read.IsMirror
            ? BounceLight.Mirror(turned, read.Lights, read.Receiver)
            : BounceLight.Matt(turned, read.Lights, read.Receiver).Light;
        if (light <= unitLight)
        {
            (facing, light) = (read.Surface.Axes.Facing, unitLight);
        }

        var aim = centre + facing * AimMm;
        var best = new BestBounce
        {
            ElevationDeg = Math.Asin(Math.Clamp(facing.Z, -1, 1)) * 180 / Math.PI,
            AzimuthDeg = Math.Atan2(facing.X, -facing.Y) * 180 / Math.PI,
            AimPoint = new() { XMm = aim.X, YMm = aim.Y, ZMm = aim.Z },
        };
        if (unitLight > 0)
        {
            best.GainStops = Math.Log2(light / unitLight);
        }

        return best;

        double Rough(Vector towards)
        {
            var surface = read.Surface.Turned(towards, rollDeg);
            return read.IsMirror
                ? BounceLight.Mirror(surface, rough, read.Receiver)
                : BounceLight.Even(surface, rough, read.Receiver, PatchesToCompare);
        }

        Vector Towards(Vector place) => place == centre ? default : (place - centre).Unit();
    }

    private static void NoteBounce(RequestContext context, EvaluateBounceRequest request, BounceRead read)
    {
        context.NoteSources(read.Sources, [read.Receiver.Place], BounceSources.ItemAt);
        if (read.IsMirror)
        {
            context.Advisories.Add(Advise.CrumpledSilver());
        }
        else if (read.Reflectance >= Advise.BrightReflectance)
        {
            context.Advisories.Add(Advise.OneReflection(read.Reflectance));
        }

        for (var i = 0; i < read.Sources.Count && !request.DirectLightBlocked; i++)
        {
            if (read.Surface.IsBetween(read.Sources[i].Face.Axes.Centre, read.Receiver.Place))
            {
                context.Advisories.Add(Advise.CardInTheWay(BounceSources.ItemAt(i)));
                break;
            }
        }

        var distances = read.Sources.Select(source => read.Surface.DistanceMm(source.Face.Axes.Centre)).ToList();
        if (distances.Min() is var nearest && nearest < Advise.HotDistanceMm)
        {
            context.Advisories.Add(Advise.CardNearLamp(BounceSources.ItemAt(distances.IndexOf(nearest)), nearest));
        }
    }
}

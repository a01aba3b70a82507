using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateBowl.</content>
public sealed partial class PlateViewAdapter
{
    private static readonly FieldPath BowlRoot = FieldPath.Root(EvaluateBowlRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateBowlResponse> EvaluateBowl(EvaluateBowlRequest request, ServerCallContext context)
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

    private static EvaluateBowlResponse Evaluate<TTrail>(EvaluateBowlRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var elevationPath = BowlRoot[EvaluateBowlRequest.ElevationDegFieldNumber];
        var elevation = context.ReadElevation(request.ElevationDeg, request.ElevationOrigin, elevationPath, ref trail);
        var vessel = ReadBowl(context, request);
        var response = new EvaluateBowlResponse
        {
            ElevationDeg = elevation,
            CentreElevationDeg = Section("the middle shows", ref trail).ShowsDeg(0, ref trail, "centre_elevation_deg"),
            WholeElevationDeg = Section("all shows", ref trail).ShowsDeg(-vessel.ContentRadiusMm, ref trail, "whole_elevation_deg"),
            ModelRevision = ModelRevision.Current,
        };
        if (vessel.DepthMm > 0)
        {
            response.FirstGlimpseDeg = Section("first glimpse", ref trail).ShowsDeg(vessel.ContentRadiusMm, ref trail, "first_glimpse_deg");
        }

        response.HalfElevationDeg = Section("half shows", ref trail).HalfDeg();
        trail.Given("Eh", response.HalfElevationDeg, "deg", "plate view (28), solved by halving the interval", "half_elevation_deg");
        trail.Given("residual", vessel.DepthMm > 0 ? vessel.VisibleShare(response.HalfElevationDeg) - 0.5 : 0, "", "V(Eh) - 1/2; 0 where all shows");

        response.ShareAtCentreElevation = Section("share at which the middle shows", ref trail)
            .VisibleShare(response.CentreElevationDeg, ref trail, "share_at_centre_elevation");
        response.RimHeightShare = Section("rim in the picture", ref trail).RimHeightShare(elevation, ref trail, "rim_height_share");
        response.CentreLineShare = Section("middle line", ref trail).LineShare(elevation, ref trail, "centre_line_share");
        response.VisibleShare = Section("surface", ref trail).VisibleShare(elevation, ref trail, "visible_share");
        if (response.VisibleShare == 0)
        {
            context.Advisories.Add(Advise.NothingShows("visible_share", response.FirstGlimpseDeg));
        }
        else if (response.VisibleShare < 0.5 && elevation >= response.CentreElevationDeg)
        {
            context.Advisories.Add(Advise.MiddleIsNotHalf(response.VisibleShare, response.HalfElevationDeg));
        }

        response.Advisories.Add(context.Advisories);
        return response;

        RoundVessel Section(string name, ref TTrail trail)
        {
            trail.Section(name);
            return vessel;
        }
    }

    private static RoundVessel ReadBowl(RequestContext context, EvaluateBowlRequest request)
    {
        var content = request.HasContentDiameterMm ? request.ContentDiameterMm : request.RimDiameterMm;
        if (content > request.RimDiameterMm)
        {
            context.Violations.Add(BowlRoot[EvaluateBowlRequest.ContentDiameterMmFieldNumber].ToString(), RefusalReason.Conflict,
                "Must not be above the diameter of the rim: a vessel that narrows to its rim is not covered.");
        }

        var distance = request.HasDistanceMm ? request.DistanceMm : double.PositiveInfinity;
        if (distance <= request.RimDiameterMm / 2)
        {
            context.Violations.Add(BowlRoot[EvaluateBowlRequest.DistanceMmFieldNumber].ToString(), RefusalReason.Conflict,
                "Must be more than half the diameter of the rim.");
        }

        context.ThrowIfRefused();
        return new(request.RimDiameterMm / 2, content / 2, request.ContentDepthMm, distance);
    }
}

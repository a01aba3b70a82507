using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateSightLine.</content>
public sealed partial class PlateViewAdapter
{
    private static readonly FieldPath SightLineRoot = FieldPath.Root(EvaluateSightLineRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateSightLineResponse> EvaluateSightLine(EvaluateSightLineRequest request, ServerCallContext context)
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

    private static EvaluateSightLineResponse Evaluate<TTrail>(EvaluateSightLineRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var elevation = context.ReadElevation(
            request.ElevationDeg, request.ElevationOrigin, SightLineRoot[EvaluateSightLineRequest.ElevationDegFieldNumber], ref trail);
        var line = new ThingBehind(request.FrontHeightMm, request.BackHeightMm, request.GapMm);
        var response = new EvaluateSightLineResponse { ElevationDeg = elevation, ModelRevision = ModelRevision.Current };
        trail.Section("the top shows");
        if (line.TopShowsDeg(ref trail, "top_shows_deg") is { } top)
        {
            response.TopShowsDeg = top;
        }

        trail.Section("all shows");
        if (line.WholeShowsDeg(ref trail, "whole_shows_deg") is { } whole)
        {
            response.WholeShowsDeg = whole;
        }

        if (line.WholeShowsGapMm(elevation, ref trail, "whole_shows_gap_mm") is { } gap)
        {
            response.WholeShowsGapMm = gap;
        }

        trail.Section("from this elevation");
        response.HiddenHeightMm = line.HiddenMm(elevation, ref trail, "hidden_height_mm");
        response.VisibleHeightShare = line.VisibleShare(response.HiddenHeightMm, ref trail, "visible_height_share");
        if (response.VisibleHeightShare == 0)
        {
            context.Advisories.Add(Advise.NothingShows("visible_height_share", response.HasTopShowsDeg ? response.TopShowsDeg : null));
        }
        else if (Math.Cos(elevation * Math.PI / 180) is var narrowing && narrowing < Advise.NarrowFront)
        {
            context.Advisories.Add(Advise.FrontForeshortened(Math.Max(0, narrowing)));
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }
}

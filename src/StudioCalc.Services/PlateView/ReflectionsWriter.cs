using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes what mirrors in a surface, with the black cards that take it away.</summary>
internal sealed class ReflectionsWriter(RequestContext context, IReadOnlyList<MirroredRead> things, Vector camera, double cardDistanceMm)
{
    private readonly IReadOnlyList<MirrorThing> _things = [.. things.Select(thing => thing.Thing)];

    /// <summary>Traces a surface, notes what a person should know, and writes both.</summary>
    public SurfaceReflections Write<TTrail>(GlossyRead surface, int lines, string field, CancellationToken stop, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var answer = new SurfaceReflections { Name = surface.Name };
        var middle = surface.Shape.Middle(camera);
        var view = MirrorView.Trace(surface.Shape, surface.Gloss, _things, camera, lines, stop);
        answer.IsSeen = middle is not null;
        trail.Given("seen", answer.IsSeen ? 1 : 0, "", "whether the camera lies before any of it", field + ".is_seen");
        if (middle is { } point)
        {
            var (cosine, azimuth, elevation) = MirrorLaw.Follow((point.Place - camera).Unit(), point.Normal, ref trail, field + ".");
            (answer.MirrorAzimuthDeg, answer.MirrorElevationDeg) = (azimuth, elevation);
            answer.MirroredLightShare = surface.Gloss.Share(cosine, ref trail, field + ".mirrored_light_share");
        }

        foreach (var reflection in view.Reflections)
        {
            stop.ThrowIfCancellationRequested();
            var at = FormattableString.Invariant($"{field}.reflections[{answer.Reflections.Count}]");
            answer.Reflections.Add(Write(surface, view, reflection, at, ref trail));
        }

        if (surface.Shape.WaveDeg > 0)
        {
            context.Advisories.Add(Advise.WavesMove(field + ".flat.wave_deg", surface.Shape.WaveDeg));
        }

        return answer;
    }

    private Reflection Write<TTrail>(GlossyRead surface, MirrorView view, MirroredThingView reflection, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var thing = things[reflection.Thing];
        var answer = new Reflection
        {
            Name = thing.Name,
            CoveredShare = trail.Given("S", reflection.CoveredShare, "", "plate view (38), sight lines", field + ".covered_share"),
            UncertaintyShare = trail.Given("u", reflection.UncertaintyShare, "", "plate view (39)", field + ".uncertainty_share"),
            MirroredLightShare = trail.Given("M", reflection.MirroredShare, "", "plate view (37), mean over it", field + ".mirrored_light_share"),
            Middle = reflection.Middle.ToAnswer(),
            FromBehind = IsBehind(thing.Thing.Middle, reflection.Middle),
            IsWanted = thing.IsWanted,
        };
        if (thing.IsWanted)
        {
            return answer;
        }

        if (!answer.FromBehind)
        {
            context.Advisories.Add(Advise.GlareFromCameraSide(field, answer.CoveredShare));
        }

        if (surface.Gloss.PolarisedRest(reflection.Cosine) is var rest && rest < Advise.PolarisedAway)
        {
            context.Advisories.Add(Advise.PolariserHelps(field, rest));
        }

        if (view.Card(reflection, cardDistanceMm) is { } card)
        {
            answer.BlackCard = Write(view, reflection.Thing, card, field + ".black_card", ref trail);
        }
        else
        {
            context.Advisories.Add(Advise.CardDoesNotReach(field, cardDistanceMm));
        }

        return answer;
    }

    private BlackCard Write<TTrail>(MirrorView view, int thing, MirrorCard card, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var answer = new BlackCard
        {
            Centre = card.Centre.ToAnswer(),
            WidthMm = trail.Given("W", card.WidthMm, "mm", "level side that holds the mirrored rays", field + ".width_mm"),
            HeightMm = trail.Given("H", card.HeightMm, "mm", "other side that holds them", field + ".height_mm"),
            AzimuthDeg = MirrorLaw.AzimuthDeg(card.Towards),
            ElevationDeg = MirrorLaw.ElevationDeg(card.Towards),
            LeftShare = trail.Given("left", view.LeftShare(card, thing), "", "plate view (38), traced again with the card", field + ".left_share"),
            WantedLostShare = trail.Given(
                "lost", view.TakenShare(card, i => things[i].IsWanted), "", "plate view (38), traced again with the card", field + ".wanted_lost_share"),
        };
        if (view.HiddenShare(card) is var hidden && hidden > 0)
        {
            context.Advisories.Add(Advise.CardBeforeLens(field, hidden));
        }

        if (answer.WantedLostShare > 0)
        {
            context.Advisories.Add(Advise.CardTakesWanted(field, answer.WantedLostShare));
        }

        if (things[thing].IsLight && _things[thing].Hull(card.Centre).Append(_things[thing].Middle).Min(card.DistanceMm) is var nearest
            && nearest < Advise.HotDistanceMm)
        {
            context.Advisories.Add(Advise.BlackCardNearLamp(field, nearest));
        }

        return answer;
    }

    // Level, as seen from the camera: from straight above nothing stands behind.
    private bool IsBehind(Vector thing, Vector middle)
    {
        var (to, back) = (thing - middle, camera - middle);
        return to.X * back.X + to.Y * back.Y < 0;
    }
}

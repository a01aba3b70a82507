using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a person should know about ranked views.</summary>
internal static class RankingNotes
{
    private const double MostlyOutside = 0.5;

    public static void Note(RequestContext context, RankViewsRequest request, RankingRead read, ViewRanked ranked, FieldPath path)
    {
        foreach (var found in ranked.Best.Where(found => found.Place.ElevationDeg >= ViewNotes.OverheadDeg).Take(1))
        {
            context.Advisories.Add(Advise.CameraOverhead(found.Place.ElevationDeg));
        }

        if (ranked.Best.Count == 0)
        {
            return;
        }

        var best = ranked.Best[0];
        if (best.Parts.OutsideShare >= MostlyOutside)
        {
            context.Advisories.Add(Advise.ComponentOutsideFrame(
                path[RankViewsRequest.SceneFieldNumber][Scene.ComponentsFieldNumber].ItemAt(best.Parts.MostOutside), best.Parts.OutsideShare));
        }

        // A range that goes all round has no end, nor do elevations go further than level and straight down.
        NoteEnd(request.Elevations, best.Place.ElevationDeg, read.Search.ElevationsDeg, RankViewsRequest.ElevationsFieldNumber, angle => angle is > 0 and < 90);
        NoteEnd(request.Azimuths, best.Place.AzimuthDeg, read.Search.AzimuthsDeg, RankViewsRequest.AzimuthsFieldNumber, _ => !GoesRound(request.Azimuths));
        NoteEnd(request.PlateTurns, best.Place.TurnDeg, read.Search.TurnsDeg, RankViewsRequest.PlateTurnsFieldNumber, _ => !GoesRound(request.PlateTurns));

        void NoteEnd(AngleRange? range, double angle, IReadOnlyList<double> angles, int field, Func<double, bool> goesOn)
        {
            if (range is not null && angles.Count > 1 && (angle == angles[0] || angle == angles[^1]) && goesOn(angle))
            {
                context.Advisories.Add(Advise.BestViewAtEnd(path[field].ToString(), angle));
            }
        }
    }

    private static bool GoesRound(AngleRange range) => range.ToDeg - range.FromDeg + (range.HasStepDeg ? range.StepDeg : 5) >= 360;
}

using Google.Protobuf.Collections;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Chances of keepers from how focus scatters, and the tries of the day that follow.</summary>
internal static class FocusChances
{
    /// <summary>The confidence with which the frames of a try hold the main component at least once.</summary>
    private const double Confidence = 0.95;
    private const int MostFrames = 1000;
    private const double LeastOfATry = 0.001;

    /// <summary>Tells the chance of a frame and the frames of a try.</summary>
    public static void Tell(PlannedShot planned, PlaceFocusResponse focus, double errorMm)
    {
        var chance = Chance(focus, errorMm);
        planned.KeepChance = chance.Keep;
        var none = default(NoTrail);
        if (KeeperCount.ForOne(chance, Confidence, ref none) is { } frames and <= MostFrames)
        {
            planned.Frames = (uint)frames;
        }
    }

    /// <summary>The day with the tries that follow from focus.</summary>
    /// <param name="context">Gets what is to be noted.</param>
    /// <param name="day">The day as asked; it stays as it is.</param>
    /// <param name="planned">The shots as planned so far.</param>
    /// <param name="root">Where the plan stands in the request.</param>
    public static ShootDay Put(RequestContext context, ShootDay day, RepeatedField<PlannedShot> planned, FieldPath root)
    {
        if (!planned.Any(shot => shot.HasKeepChance))
        {
            return day;
        }

        var focused = day.Clone();
        var byName = focused.Shots.ToDictionary(shot => shot.Name, StringComparer.Ordinal);
        for (var i = 0; i < planned.Count; i++)
        {
            if (!planned[i].HasKeepChance)
            {
                continue;
            }

            var frames = byName[planned[i].Name].Frames ??= new();
            frames.FramesPerTry = frames.HasFramesPerTry ? frames.FramesPerTry : planned[i].HasFrames ? planned[i].Frames : MostFrames;
            var chance = new KeepChance(planned[i].KeepChance, 1 - planned[i].KeepChance);
            frames.KeepChance = Math.Max(LeastOfATry, 1 - KeeperCount.ChanceOfFewer(chance, (int)frames.FramesPerTry, keepers: 1));
            if (!planned[i].HasFrames)
            {
                context.Advisories.Add(Advise.FocusSeldomHolds(
                    root[PlanShootRequest.ShotsFieldNumber].At(i)[PlanShot.FocusErrorMmFieldNumber], planned[i].KeepChance));
            }
        }

        return focused;
    }

    private static KeepChance Chance(PlaceFocusResponse focus, double errorMm)
    {
        var placed = focus.Solution ?? focus.NotReached.Nearest;
        return KeepChance.OfSlips(placed.SlipForwardMm, placed.HasSlipBackMm ? placed.SlipBackMm : double.PositiveInfinity, errorMm);
    }
}

using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes what no order helps, with what would.</summary>
internal static class NeverFitsWriter
{
    public static IEnumerable<NeverFits> Write(DayRead day, IReadOnlyList<AloneCheck> alone, CancellationToken cancellation) => alone.SelectMany(check =>
        check.NeverKept.Select(never => Write(day, check.Block, never, cancellation)).Concat(check.HasPlace ? [] : [NoPlace(day, check.Block)]));

    private static NeverFits Write(DayRead day, int block, NeverKept never, CancellationToken cancellation)
    {
        var (plate, read) = day.PlateAt(block, never.Plate);
        var budget = read.Budgets.First(one => ReferenceEquals(one.Budget, never.Budget));
        var written = new NeverFits
        {
            Reason = never.IsByOpenTimes ? NeverFitsReason.Hours : NeverFitsReason.Budget,
            Plate = plate.Name,
            Component = never.Budget.Component,
            Shot = day.ShotAt(block, budget.LastFrame.Index).Name,
            Missing = Times.FromMilliseconds(never.ExcessMs),
            Least = Times.FromMilliseconds(never.ReachedMs),
            Limit = Times.FromMilliseconds(never.Budget.LimitMs),
        };
        written.Remedies.Add(NeverFitsRemedies.Of(day.Day, block, never, cancellation));
        return written;
    }

    private static NeverFits NoPlace(DayRead day, int block)
    {
        var written = new NeverFits { Reason = NeverFitsReason.Hours, Shot = day.ShotAt(block, 0).Name };
        var planned = day.Day.Blocks[block];
        var tooLong = planned.Plates.SelectMany(plate => plate.Stages)
            .Where(stage => stage.Resource is { } resource && IsTooLong(day.Day.Resources[resource].Open, stage.DurationMs))
            .Select(stage => (day.Day.Resources[stage.Resource!.Value].Id, stage.DurationMs))
            .Concat(planned.Shots.Where(shot => IsTooLong(day.Day.Resources[day.Day.Set].Open, Kept(shot))).Select(shot => (CrewReader.SetName, Kept(shot))))
            .Concat(planned.Shots.Where(shot => IsTooLong(shot.Open, shot.ShootMs)).Select(shot => ("the frames of " + shot.Id, shot.ShootMs)));
        foreach (var (what, needed) in tooLong)
        {
            written.Remedies.Add(FormattableString.Invariant($"Open hours of {what} for {needed / 1000.0:0.###} s in one piece."));
        }

        if (written.Remedies.Count == 0)
        {
            written.Remedies.Add("Longer hours, or an earlier start: what it needs is not open one after the other.");
        }

        return written;

        static long Kept(Shot shot) => shot.ShootMs + (shot.ApprovalHoldsSet ? shot.ApproveMs : 0);
    }

    private static bool IsTooLong(IReadOnlyList<OpenTime> open, long durationMs) =>
        open.Count > 0 && open.All(one => one.UntilMs - one.FromMs < durationMs);
}

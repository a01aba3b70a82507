using StudioCalc.Planning;

namespace StudioCalc.Services;

/// <summary>What would help a component that can never last: each change is made to its group alone, which is then checked again.</summary>
internal static class NeverFitsRemedies
{
    public static IEnumerable<string> Of(ShootDay day, int index, NeverKept never, CancellationToken cancellation)
    {
        var block = day.Blocks[index];
        var plate = block.Plates[never.Plate];
        var last = plate.Stages.Count - 1;
        var landed = Moment.End(last);
        var shot = never.Budget.LastFrame.Index;
        List<(string Text, Block Changed, Budget Budget)> trials = [];

        // Only what is laid on can be laid later: what comes hot or cold from the kitchen has its clock from there.
        if (never.Budget.Event != landed && plate.Stages[never.Budget.Event.Index].Kind is StageKind.Garnish or StageKind.PlateUp && never.Budget.Event.FromEnd)
        {
            var laid = never.Budget with { Event = landed };
            trials.Add(("Lay it on the set, so that its clock starts there", With(block, never, laid), laid));
        }

        if (block.Shots.Any(one => !one.SetupBeforePlate))
        {
            trials.Add(("Make the set ready with a stand-in before the plate comes",
                block with { Shots = [.. block.Shots.Select(one => one with { SetupBeforePlate = true })] }, never.Budget));
        }

        if (block.Shots.Take(shot).Any(one => one.Plates.Contains(never.Plate)))
        {
            var own = never.Budget with { LastFrame = never.Budget.LastFrame with { Index = 0 } };
            trials.Add(("Cook a second plate for the last shot that needs it", Alone(block, never, shot, own), own));
        }

        foreach (var (text, changed, budget) in trials)
        {
            var missing = Missing(day, changed, budget, cancellation);
            if (missing < never.ExcessMs)
            {
                yield return missing <= 0
                    ? $"{text}: then it fits."
                    : FormattableString.Invariant($"{text}: then {missing / 1000.0:0.###} s are missing still.");
            }
        }

        var frames = never.Budget.LastFrame.FromEnd ? block.Shots[shot].ShootMs : never.Budget.LastFrame.OffsetMs;
        if (frames > 0 && !never.IsByOpenTimes)
        {
            yield return frames > never.ExcessMs
                ? FormattableString.Invariant($"Take the frames that need it within {(frames - never.ExcessMs) / 1000.0:0.###} s instead of {frames / 1000.0:0.###} s: then it fits.")
                : FormattableString.Invariant($"Fewer frames alone do not help: without any, {(never.ExcessMs - frames) / 1000.0:0.###} s are missing still.");
        }

        if (never.IsByOpenTimes)
        {
            yield return FormattableString.Invariant($"Hours that let {never.LeastMs / 1000.0:0.###} s of work go on without a break: then it fits.");
        }
    }

    private static Block With(Block block, NeverKept never, Budget budget) => block with
    {
        Plates = [.. block.Plates.Select((plate, p) => p == never.Plate
            ? plate with { Budgets = [.. plate.Budgets.Select(one => ReferenceEquals(one, never.Budget) ? budget : one)] } : plate)],
    };

    // The shot with its plates and no other; of the budgets only this one.
    private static Block Alone(Block block, NeverKept never, int shot, Budget budget)
    {
        var plates = block.Shots[shot].Plates;
        return block with
        {
            Plates = [.. plates.Select(plate => block.Plates[plate] with { Budgets = plate == never.Plate ? [budget] : [] })],
            Shots = [block.Shots[shot] with { Plates = [.. Enumerable.Range(0, plates.Count)] }],
        };
    }

    private static long Missing(ShootDay day, Block changed, Budget budget, CancellationToken cancellation)
    {
        var check = AloneCheck.Of(day with { Blocks = [changed with { Position = null }], Progress = null }, cancellation)[0];
        return check.NeverKept.Where(never => ReferenceEquals(never.Budget, budget)).Select(never => never.ExcessMs).FirstOrDefault();
    }
}

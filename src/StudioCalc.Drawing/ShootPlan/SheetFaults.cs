using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>What of a day cannot be kept, in words.</summary>
internal static class SheetFaults
{
    public static IEnumerable<string> Of(OrderNotReached not)
    {
        foreach (var one in not.NeverFits)
        {
            yield return Text(one) + string.Concat(one.Remedies.Select(remedy => " " + remedy.TrimEnd('.') + "."));
        }

        if (not.NeverFits.Count == 0)
        {
            yield return "Each plate fits alone, but not all together within the hours.";
        }

        if (not.LeftOut.Count > 0)
        {
            yield return $"Left out, as the hours hold no place for them: {string.Join(", ", not.LeftOut)}.";
        }

        if (not.Nearest is not null && not.ShortfallS == 0)
        {
            yield break;
        }

        yield return not.Nearest is null
            ? "There is no order within the hours: this sheet has no times."
            : $"The order below breaks budgets by {SheetClock.Length(not.ShortfallS)} in all. Change the plan before the day.";
    }

    private static string Text(NeverFits one)
    {
        var what = string.Join(", ", new[] { one.Plate, one.Component, one.Shot }.Where(name => name.Length > 0));
        return one.Missing is not null
            ? $"{what}: {(one.Reason == NeverFitsReason.Hours ? "within the open hours it " : "")}lasts {SheetClock.Length(one.Limit)}, needs at least {SheetClock.Length(one.Least)}; {SheetClock.Length(one.Missing)} are missing."
            : $"{what}: the open hours are too short or too early.";
    }
}

using System.Globalization;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>The running order: shots, and the breaks between them.</summary>
internal static class SheetRows
{
    public static IReadOnlyList<SheetRow> Of(SheetClock clock, PlanShootRequest asked, PlanShootResponse plan, ShootOrder order)
    {
        var shots = asked.Day.Shots.ToDictionary(shot => shot.Name, StringComparer.Ordinal);
        var planned = plan.Shots.ToDictionary(shot => shot.Name, StringComparer.Ordinal);
        var rows = order.Shots.Select(shot => (From: shot.Start, Row: Shot(clock, shot, shots[shot.Name], planned.GetValueOrDefault(shot.Name))));
        var breaks = Breaks(asked.Day.Crew, order.Finish).Select(one => (one.From, Row: new SheetRow(clock.Span(one.From, one.Until), "Break: the set is closed", "", [], [])));
        return [.. rows.Concat(breaks).OrderBy(one => one.From.ToTimeSpan()).Select(one => one.Row)];
    }

    private static SheetRow Shot(SheetClock clock, OrderedShot timed, DayShot shot, PlannedShot? planned)
    {
        var changes = timed.ChangedAttributes.Count > 0
            ? $"change {string.Join(", ", timed.ChangedAttributes.Select(name => With(name, shot)))}"
            : "ready the set";
        var set = timed.SetupTime.ToTimeSpan() > TimeSpan.Zero ? $"from {clock.At(timed.SetupStart)}, {SheetClock.Length(timed.SetupTime)}: {changes}" : "";
        return new(
            clock.Span(timed.Start, timed.End),
            string.Create(CultureInfo.InvariantCulture, $"{timed.Place}. {timed.Name}"),
            set,
            shot.Plates,
            [.. Facts(clock, timed, shot, planned)]);
    }

    private static string With(string name, DayShot shot) =>
        shot.Attributes.FirstOrDefault(one => one.Name == name) is { } attribute ? $"{name} to {attribute.Value}" : name;

    private static IEnumerable<string> Facts(SheetClock clock, OrderedShot timed, DayShot shot, PlannedShot? planned)
    {
        if (planned is { Setup.Length: > 0 })
        {
            yield return $"Setup {planned.Setup}.";
        }

        if (planned?.Focus is { } focus && (focus.Solution ?? focus.NotReached.Nearest) is { } placed)
        {
            yield return $"{SheetSetups.Text(placed.Aperture)}; focus {Beside(placed.FocusOffsetMm)} the aim point"
                + (focus.Solution is null ? "; one frame does not hold the main component." : ".");
        }

        if (planned is { HasFrames: true })
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{planned.Frames} {(planned.Frames == 1 ? "frame" : "frames")} to a try; each is sharp with a chance of {100 * planned.KeepChance:0} %.");
        }

        if (timed.Approved.ToTimeSpan() > timed.End.ToTimeSpan())
        {
            yield return $"Approval by {clock.At(timed.Approved)}" + (shot.ApprovalHoldsSet ? "; the set is kept until then." : ".");
        }

        if (shot.HasNote)
        {
            yield return shot.Note;
        }
    }

    private static string Beside(double offsetMm)
    {
        var text = Math.Abs(offsetMm).ToString("0.#", CultureInfo.InvariantCulture);
        return text == "0" ? "at" : $"{text} mm {(offsetMm < 0 ? "before" : "behind")}";
    }

    private static IEnumerable<(Duration From, Duration Until)> Breaks(Crew? crew, Duration finish) => crew is null
        ? []
        : crew.SetHours.Zip(crew.SetHours.Skip(1), (before, after) => (From: before.Until, Until: after.From))
            .Where(one => one.From.ToTimeSpan() < finish.ToTimeSpan() && one.Until.ToTimeSpan() > one.From.ToTimeSpan());
}

using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Plate cards, and the pass list: what each station does in order.</summary>
internal sealed class SheetPlates(SheetClock clock, ShootDay day, ShootOrder? order)
{
    private const string Styling = "Stylist";
    private const string Carrying = "Carrying";
    private const string WhenRoom = "When there is room";

    private readonly Dictionary<string, DayPlate> _plates = day.Plates.ToDictionary(plate => plate.Name, StringComparer.Ordinal);

    public IReadOnlyList<SheetPlate> Cards() => order is null
        ? []
        : [.. order.Plates.Select(Card), .. day.Plates.Where(plate => order.Plates.All(timed => timed.Name != plate.Name)).Select(Untimed)];

    /// <summary>Stations in the order of the request, then the stylists, carrying, and what has no time.</summary>
    public IReadOnlyList<SheetList> Pass()
    {
        var tasks = (order?.Plates ?? []).SelectMany(plate => plate.Stages.Select(stage => (plate.Name, Stage: stage)))
            .OrderBy(task => task.Stage.Start.ToTimeSpan())
            .ThenBy(task => task.Name, StringComparer.Ordinal)
            .ToList();
        var stations = (day.Crew?.Stations ?? []).Select(station => new SheetList(
            station.Count > 1 ? $"{station.Name} (×{station.Count})" : station.Name,
            [.. tasks.Where(task => task.Stage.Station == station.Name).Select(task => new SheetTask(clock.At(task.Stage.Start), Marked(task.Name), $"until {clock.At(task.Stage.End)}"))]));
        var styling = new SheetList(
            Styling,
            [
                .. tasks.Where(task => task.Stage.Kind is PlateStageKind.PlateUp or PlateStageKind.Garnish)
                    .Select(task => new SheetTask(clock.At(task.Stage.Start), $"{Marked(task.Name)}: {Name(task.Stage.Kind)}", $"until {clock.At(task.Stage.End)}")),
            ]);
        var carrying = new SheetList(
            Carrying,
            [
                .. tasks.Where(task => task.Stage.Kind == PlateStageKind.Carry)
                    .Select(task => new SheetTask(clock.At(task.Stage.Start), Marked(task.Name), $"until {clock.At(task.Stage.End)}")),
            ]);
        var whenever = new SheetList(
            WhenRoom,
            [.. day.Plates.Where(plate => order is not null && !order.Plates.Any(timed => timed.Name == plate.Name)).Select(plate => new SheetTask("", Marked(plate.Name), UseOf(plate)))]);
        return [.. stations.Append(styling).Append(carrying).Append(whenever).Where(list => list.Tasks.Count > 0)];
    }

    private string Marked(string plate) => _plates[plate].NotForEating ? $"{plate} (NOT FOR EATING)" : plate;

    // Stand-ins and spares that no shot waits for.
    private static SheetPlate Untimed(DayPlate plate) => new(
        plate.Name,
        UseOf(plate),
        "when the kitchen has room",
        [.. plate.Stages.Select(stage => new SheetTask(SheetClock.Length(stage.Time.Likely), Name(stage.Kind) + (stage.HasStation ? $", {stage.Station}" : ""), ""))],
        [],
        [.. Facts(plate)]);

    private static string UseOf(DayPlate plate) => plate.Use switch
    {
        PlateUse.StandIn => "stand-in",
        PlateUse.Spare => "spare",
        _ => "",
    };

    private SheetPlate Card(OrderedPlate timed)
    {
        var plate = _plates[timed.Name];
        return new(
            timed.Name,
            UseOf(plate),
            clock.At(timed.Fire),
            [
                .. timed.Stages.Select(stage => new SheetTask(
                    clock.Span(stage.Start, stage.End), Name(stage.Kind) + (stage.Station.Length > 0 ? $", {stage.Station}" : ""), "")),
            ],
            [.. timed.Budgets.Where(budget => budget.Limit is not null).Select(Budget)],
            [
                .. timed.Wait.ToTimeSpan() > TimeSpan.Zero ? [$"Waits {SheetClock.Length(timed.Wait)} on the set."] : Array.Empty<string>(),
                .. Facts(plate),
            ]);
    }

    private SheetBudget Budget(TimedBudget budget) => new(
        budget.Component,
        SheetClock.Length(budget.Limit),
        clock.At(budget.NeededUntil),
        budget.SlackS < 0 ? $"{SheetClock.Length(budget.SlackS)} too long" : $"{SheetClock.Length(budget.SlackS)} left",
        budget.SlackS < 0);

    private static IEnumerable<string> Facts(DayPlate plate)
    {
        if (plate.Allergens.Count > 0)
        {
            yield return $"Allergens as declared: {string.Join(", ", plate.Allergens)}.";
        }

        if (plate.NotForEating)
        {
            yield return "NOT FOR EATING.";
        }

        if (plate.HasNote)
        {
            yield return plate.Note;
        }
    }

    private static string Name(PlateStageKind kind) => kind switch
    {
        PlateStageKind.Cook => "cook",
        PlateStageKind.Rest => "rest",
        PlateStageKind.PlateUp => "plate",
        PlateStageKind.Garnish => "garnish",
        PlateStageKind.Carry => "carry",
        _ => "settle",
    };
}

using System.Globalization;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>A day in the words of its sheet, the same for the page and for plain text.</summary>
internal sealed record SheetDay
{
    public required string Title { get; init; }

    public required string When { get; init; }

    /// <summary>What is promised, and what cannot be kept.</summary>
    public required IReadOnlyList<string> Promises { get; init; }

    public required IReadOnlyList<string> Broken { get; init; }

    public required IReadOnlyList<SheetCaution> Cautions { get; init; }

    public required IReadOnlyList<string> Notes { get; init; }

    public required IReadOnlyList<SheetRow> Rows { get; init; }

    public required IReadOnlyList<SheetList> Pass { get; init; }

    public required IReadOnlyList<SheetPlate> Plates { get; init; }

    public required IReadOnlyList<SheetSetup> Setups { get; init; }

    public required string Foot { get; init; }

    public static SheetDay Of(CallSheetInput input)
    {
        var (asked, plan) = (input.Request.Plan, input.Plan);
        var order = plan.Order.Solution ?? plan.Order.NotReached.Nearest;
        var clock = new SheetClock(input.Local, order is null ? [new()] : [new(), .. Times(order)]);
        var plates = new SheetPlates(clock, asked.Day, order);
        return new()
        {
            Title = plan.Title.Length > 0 ? plan.Title : "Call sheet",
            When = $"{clock.Date}, start {clock.At(new())} ({plan.TimeZone}, {clock.Offset})",
            Promises = order is null ? [] : [.. PromisesOf(clock, plan, order)],
            Broken = plan.Order.NotReached is { } not ? [.. SheetFaults.Of(not)] : [],
            Cautions = SheetCautions.Of(plan, asked.Day),
            Notes = input.Request.Notes,
            Rows = order is null ? [] : SheetRows.Of(clock, asked, plan, order),
            Pass = plates.Pass(),
            Plates = plates.Cards(),
            Setups = SheetSetups.Of(plan),
            Foot = $"Call sheet by StudioCalc, model revision {plan.ModelRevision}. Times are local. The figures help people decide; they replace "
                + "neither a test frame nor a person who says stop.",
        };
    }

    private static IEnumerable<Duration> Times(ShootOrder order) =>
        order.Shots.SelectMany(shot => new[] { shot.SetupStart, shot.Start, shot.End, shot.Approved })
            .Concat(order.Plates.SelectMany(plate => plate.Stages.SelectMany(stage => new[] { stage.Start, stage.End }).Append(plate.Fire)))
            .Append(order.Finish);

    private static IEnumerable<string> PromisesOf(SheetClock clock, PlanShootResponse plan, ShootOrder order)
    {
        yield return $"Planned end {clock.ByMinute(order.Finish)}: {order.Shots.Count} shots, {order.Plates.Count} plates, "
            + $"{SheetClock.Length(order.ChangeTime)} of changes on the set.";
        if (plan.Throughput is { } told)
        {
            yield return $"By simulation the day ends by {clock.ByMinute(told.Finish.P50.Value)} at even chance, and by "
                + $"{clock.ByMinute(told.Finish.P90.Value)} nine times in ten ({BasisOf(told.Basis)}); "
                + string.Create(CultureInfo.InvariantCulture, $"{told.MeanShotsPerHour:0.0} finished shots an hour.");
        }

        yield return order.IsProved
            ? "No other order breaks less, ends earlier or changes less: proved."
            : order.FinishBound is null
                ? "The best order found; how much better the best of all could be is not known."
                : $"The best order found; the best of all can end at most {SheetClock.Length((order.Finish.ToTimeSpan() - order.FinishBound.ToTimeSpan()).TotalSeconds)} earlier.";
    }

    private static string BasisOf(EstimateBasis basis) => basis switch
    {
        EstimateBasis.StudioHistory => "on the studio's history",
        EstimateBasis.Measured => "as measured for this shoot",
        _ => "on assumptions that nobody measured",
    };
}

using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes replanned days.</summary>
internal sealed class ReplanWriter(
    ReplanShootRequest request, DayDraft draft, ReplanRead read, RestOfDay rest, Planning.ShootOrder order, PlanBefore before)
{
    private const long UsualHorizonMs = 60_000;

    private readonly Dictionary<Operation, TimedOperation> _latest = order.Schedule.Latest.ToDictionary(one => one.Operation);

    /// <summary>What has begun, for the order: approved shots are left out of it.</summary>
    public static BegunShots Begun(RestOfDay rest, ReplanRead read) => new(
        rest.Begun,
        [.. rest.Taken.Where(one => read.Log.Shots[one.Shot].ApprovedMs is not null).Select(one => rest.Day.Shots[one.Shot])],
        rest.Taken.LastOrDefault(one => read.Log.Shots[one.Shot].ApprovedMs is not null)?.Shot);

    public ReplanShootResponse Write(SequenceShootResponse answer)
    {
        var response = new ReplanShootResponse
        {
            Order = answer,
            LaterS = (order.Schedule.FinishMs - before.FinishMs) / 1000.0,
            OrderChanged = IsChanged(),
        };
        response.FireNow.Add(FireNow());
        for (var plate = 0; plate < draft.Asked.Plates.Count; plate++)
        {
            if (rest.Day.Plates[plate] is { } place && rest.IsBegun(plate) && IsPlanned(place))
            {
                response.PlatesOut.Add(Out(plate, place));
                response.Replace.Add(place.Budgets.Where(budget => budget.Asked.Event == PlateEvent.Garnished)
                    .Select(budget => (Budget: budget, Ends: Ends(budget, place), Until: Until(budget, place))).Where(one => one.Ends < one.Until)
                    .Select(one => new ReplaceComponent
                    {
                        Plate = draft.Asked.Plates[plate].Name,
                        Component = one.Budget.Asked.Component,
                        Ends = Times.FromMilliseconds(one.Ends!.Value),
                        NeededUntil = Times.FromMilliseconds(one.Until),
                    }));
            }
        }

        response.Portions.Add(request.Portions.Select(portions => Portions(portions.Plate, portions.Count)));
        response.LostShots.Add(rest.Lost.Select(shot => draft.Asked.Shots[shot].Name));
        return response;
    }

    private bool IsChanged()
    {
        var ranks = order.Schedule.Order.Select(block => rest.Groups.Shots[block].Where(rest.Left.Contains).Min(shot => read.Ranks[shot])).ToList();
        return !ranks.SequenceEqual(ranks.Order());
    }

    private IEnumerable<FireNow> FireNow()
    {
        var until = read.Log.NowMs + (request.Horizon?.ToMilliseconds() ?? UsualHorizonMs);
        return Enumerable.Range(0, draft.Asked.Plates.Count)
            .Where(plate => rest.Day.Plates[plate] is { } place && !rest.IsBegun(plate) && IsPlanned(place))
            .Select(plate => (AtMs: _latest[rest.Day.Plates[plate]!.Stage(0)].StartMs, Plate: plate))
            .Where(one => one.AtMs <= until).Order()
            .Select(one =>
            {
                var fire = new FireNow
                {
                    Plate = draft.Asked.Plates[one.Plate].Name,
                    At = Times.FromMilliseconds(one.AtMs),
                    InS = (one.AtMs - read.Log.NowMs) / 1000.0,
                };
                if (before.FireMs(one.Plate) is { } planned)
                {
                    fire.LaterS = (one.AtMs - planned) / 1000.0;
                }

                return fire;
            });
    }

    private PlateOut Out(int plate, PlateRead place)
    {
        var written = new PlateOut { Plate = draft.Asked.Plates[plate].Name };
        var tightest = place.Budgets.Where(budget => budget.Budget is not null)
            .OrderBy(budget => Ends(budget, place) - Until(budget, place)).FirstOrDefault();
        if (tightest is not null)
        {
            written.Component = tightest.Asked.Component;
            written.LeftS = (Ends(tightest, place)!.Value - read.Log.NowMs) / 1000.0;
            written.NeededS = (Until(tightest, place) - read.Log.NowMs) / 1000.0;
        }

        return written;
    }

    private PortionsLeft Portions(string name, uint count)
    {
        var plate = Enumerable.Range(0, draft.Asked.Plates.Count).First(i => draft.Asked.Plates[i].Name == name);
        var isFired = rest.Day.Plates[plate] is { } place && !rest.IsBegun(plate) && IsPlanned(place);
        return new() { Plate = name, Count = count - (isFired ? 1u : 0u) };
    }

    private bool IsPlanned(PlateRead place) => _latest.ContainsKey(place.Stage(0));

    private long? Ends(BudgetPlace budget, PlateRead place) =>
        budget.Budget is { } known ? At(place.Stage(budget.Event.Index), budget.Event) + known.LimitMs : null;

    private long Until(BudgetPlace budget, PlateRead place) => At(Operation.Shoot(place.Block, budget.LastFrame.Index), budget.LastFrame);

    private long At(Operation operation, Moment moment) => moment.OffsetMs + (moment.FromEnd ? _latest[operation].EndMs : _latest[operation].StartMs);
}

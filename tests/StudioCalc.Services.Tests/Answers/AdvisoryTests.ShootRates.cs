using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Promises, portions, handover and circuits.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> ShootRatePairs = new()
    {
        [AdvisoryCode.PromiseRestsOnAssumptions] = (
            () => Calls.ShootPlan.QuoteShoot(Quotes.Known(EstimateBasis.Assumption)),
            () => Calls.ShootPlan.QuoteShoot(Quotes.Known(EstimateBasis.StudioHistory))),
        [AdvisoryCode.DishesDoNotFit] = (
            () => Quoted(request => (request.Dishes, request.ShotsPerDish, request.Day) = (3, 1, Seconds(6599))),
            () => Quoted(request => (request.Dishes, request.ShotsPerDish, request.Day) = (3, 1, Seconds(6600)))),
        [AdvisoryCode.LongDay] = (
            () => Quoted(request => request.LoadIn = Quotes.Minutes(636)),
            () => Quoted(request => request.LoadIn = Quotes.Minutes(635))),
        [AdvisoryCode.PlatesMayFailTogether] = (() => Portions(0.99, 0.995), () => Portions(0.99, 0.985)),
        [AdvisoryCode.CardHoldsNoFrame] = (() => Handover(request => request.CardGb = 0.1), () => Handover(request => request.CardGb = 0.2)),
        [AdvisoryCode.OneCopyOnly] = (() => Handover(request => request.Copies = 1), () => Handover(request => request.Copies = 2)),
        [AdvisoryCode.CircuitOverloaded] = (
            () => Circuit(request => request.UsableShare = 0.819),
            () => Circuit(request => request.UsableShare = 0.82)),
        [AdvisoryCode.PlateOftenBreaks] = (() => Simulated(Runs.OneDish(budgetS: 239)), () => Simulated(Runs.OneDish(budgetS: 240))),
        [AdvisoryCode.HoursOftenMissed] = (() => Simulated(Runs.OneDish(untilS: 599)), () => Simulated(Runs.OneDish(untilS: 600))),
        [AdvisoryCode.ElectricianDecides] = (() => Circuit(_ => { }), () => Circuit(request => request.Loads[0].PowerW = 0)),
    };

    private static Duration Seconds(long seconds) => new() { Seconds = seconds };

    // Of certain times: 25 + 15 + 10 min, and 20 min a dish.
    private static QuoteShootResponse Quoted(Action<QuoteShootRequest> change)
    {
        var request = Quotes.Certain();
        change(request);
        return Calls.ShootPlan.QuoteShoot(request);
    }

    private static EstimateThroughputResponse Simulated(EstimateThroughputRequest request) => Calls.ShootPlan.EstimateThroughput(request);

    private static EstimatePortionsResponse Portions(double chance, double confidence) =>
        Calls.ShootPlan.EstimatePortions(new() { PlateChance = chance, Confidence = confidence });

    private static EstimateHandoverResponse Handover(Action<EstimateHandoverRequest> change)
    {
        var request = Examples.Handover();
        request.FrameMb = 150;
        change(request);
        return Calls.ShootPlan.EstimateHandover(request);
    }

    // 3017 W of 3680 W: 0.8198 of the rating.
    private static CheckCircuitResponse Circuit(Action<CheckCircuitRequest> change)
    {
        var request = new CheckCircuitRequest { Loads = { new V1.CircuitLoad { Name = "kettle", PowerW = 3017 } }, MainsV = 230, BreakerA = 16 };
        change(request);
        return Calls.ShootPlan.CheckCircuit(request);
    }
}

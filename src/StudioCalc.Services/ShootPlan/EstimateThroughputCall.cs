using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EstimateThroughput.</content>
public sealed partial class ShootPlanAdapter
{
    private const double OftenShare = 0.1;

    private static readonly FieldPath ThroughputRoot = FieldPath.Root(EstimateThroughputRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EstimateThroughputResponse> EstimateThroughput(EstimateThroughputRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        var cancellation = context.CancellationToken;
        var notes = new RequestContext(null);
        var dayPath = ThroughputRoot[EstimateThroughputRequest.DayFieldNumber];
        var day = notes.ReadDay(request.Day, dayPath, cancellation);
        var asked = notes.ReadThroughput(request, day, ThroughputRoot);
        var order = Planning.ShootOrder.Find(day.Day, asked.Effort, cancellation);
        notes.NoteDay(day, dayPath);
        EstimateThroughputResponse response;
        if (request.IncludeWorking)
        {
            var trail = StepTrail.Start();
            response = Simulate(day, order, asked, ref trail, cancellation);
            response.Working.Add(trail);
        }
        else
        {
            var none = default(NoTrail);
            response = Simulate(day, order, asked, ref none, cancellation);
        }

        response.Advisories.Add(notes.Advisories);
        return Task.FromResult(response);
    }

    /// <summary>Simulates a day in its order; its own advisories are in the answer, those of the day are not.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    internal static EstimateThroughputResponse Simulate<TTrail>(
        DayRead day, Planning.ShootOrder order, ThroughputRead asked, ref TTrail trail, CancellationToken cancellation)
        where TTrail : struct, ITrail
    {
        var cores = Environment.ProcessorCount;
        var input = DaySimulationInput.Of(day.Day, order.Schedule, asked.Policy, asked.Uncertainty);
        var simulation = DaySimulation.Run(input, asked.Replications, asked.Seed, cores, cancellation);
        var changes = asked.Changes.Select(change => ChangeValue.AfterReordering(
            simulation, change.Day.Day, asked.Policy, change.Day.Uncertainty, asked.Effort, cores, cancellation)).ToList();
        var rates = DayRates.Evaluate(new(day.Day, asked.Uncertainty), order.Schedule.SetupMs, ref trail);
        var response = new ThroughputWriter(day, order, asked).Write(simulation, rates, changes);
        response.Advisories.Add(ThroughputNotes(response));
        return response;
    }

    private static IEnumerable<Advisory> ThroughputNotes(EstimateThroughputResponse response)
    {
        if (response.Basis == EstimateBasis.Assumption)
        {
            yield return Advise.PromiseRestsOnAssumptions("finish.p90");
        }

        if (response.Finish.P90.Value.ToSeconds() * 1000 > LongDayMs)
        {
            yield return Advise.LongDay("finish.p90", response.Finish.P90.Value.ToSeconds());
        }

        for (var i = 0; i < response.Shots.Count; i++)
        {
            if (response.Shots[i].BudgetBreakChance > OftenShare)
            {
                yield return Advise.PlateOftenBreaks(
                    FormattableString.Invariant($"shots[{i}].budget_break_chance"), response.Shots[i].BudgetBreakChance);
            }
        }

        if (response.OverHoursShare > OftenShare || response.MeanMissedShots > OftenShare)
        {
            yield return Advise.HoursOftenMissed(response.OverHoursShare, response.MeanMissedShots);
        }
    }
}

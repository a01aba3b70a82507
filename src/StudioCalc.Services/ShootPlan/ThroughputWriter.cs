using StudioCalc.Maths;
using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes what a simulation of a day comes to.</summary>
internal sealed class ThroughputWriter(DayRead day, Planning.ShootOrder order, ThroughputRead asked)
{
    private static readonly EstimateBasis[] FromTheWeakest = [EstimateBasis.Assumption, EstimateBasis.StudioHistory, EstimateBasis.Measured];

    public EstimateThroughputResponse Write(DaySimulation simulation, DayRates rates, IReadOnlyList<ChangeValue> changes)
    {
        var basis = asked.Defaults.Select(one => one.Basis).Append(asked.Basis.ToContract()).MinBy(one => Array.IndexOf(FromTheWeakest, one));
        return new()
        {
            Finish = simulation.FinishMs.ToTimes(simulation.MeanFinishMs),
            ShotsPerHour = simulation.FinishedPerHourThousandths.ToNumbers(),
            MeanShotsPerHour = simulation.FinishedPerHour,
            KeepersPerHour = simulation.KeepersPerHour,
            FramesPerHour = simulation.FramesPerHour,
            MeanFinishedShots = simulation.MeanFinished,
            MeanMissedShots = simulation.MeanMissed + order.Schedule.LeftOut.Sum(block => day.Day.Blocks[block].Shots.Count),
            OverHoursShare = (double)simulation.OverHours / simulation.Replications,
            MeanIdle = (simulation.MeanIdleMs / 1000).ToDuration(),
            Shots = { order.Schedule.Order.Select(block => Write(block, simulation)) },
            Resources = { simulation.Resources.Select((one, i) => Write(day.Day.Resources[i].Id, one)) },
            Bottleneck = day.Day.Resources[simulation.Bottleneck].Id,
            Bounds = Write(rates),
            Changes = { changes.Select((value, i) => Write(asked.Changes[i].Asked, value)) },
            Basis = basis,
            Defaults = { asked.Defaults },
            Seed = simulation.Seed,
            Replications = (uint)simulation.Replications,
            ModelRevision = ModelRevision.Current,
        };
    }

    private static V1.SimulatedResource Write(string name, Planning.SimulatedResource one) => new()
    {
        Name = name,
        BusyShare = one.UtilisationShare,
        BindingShare = one.BindingShare,
        PathShare = one.PathShare,
    };

    private static DayChangeWorth Write(DayChange change, ChangeValue value) => new()
    {
        Change = change.Clone(),
        MeanSavedS = value.MeanSavedMs / 1000,
        SavedLowS = value.Interval.LowMs / 1000,
        SavedHighS = value.Interval.HighMs / 1000,
        BuysNothing = value.Interval is { LowMs: <= 0, HighMs: >= 0 },
    };

    private SimulatedShot Write(int block, DaySimulation simulation)
    {
        var one = simulation.Blocks[block];
        var all = (double)simulation.Replications;
        return new()
        {
            Names = { day.Day.Blocks[block].Shots.Select(shot => shot.Id) },
            BudgetBreakChance = one.Broken / all,
            BudgetBreakChanceError = one.BrokenError(simulation.Replications),
            MeanMadeAgain = one.MadeAgain / all,
            MeanGivenUp = one.GivenUp / all,
            MeanWait = (one.MeanWaitMs / 1000).ToDuration(),
        };
    }

    private ThroughputBounds Write(DayRates rates)
    {
        var bounds = new ThroughputBounds
        {
            PlannedFinish = (order.Schedule.FinishMs / 1000.0).ToDuration(),
            BottleneckShotsPerHour = rates.ShotsPerHour,
            Bottleneck = day.Day.Resources[rates.Busiest].Id,
            MeanTries = rates.MeanTries,
        };
        if (order.GapMs is not null)
        {
            bounds.FinishBound = (order.Bound.FinishMs / 1000.0).ToDuration();
        }

        return bounds;
    }
}

using CsCheck;
using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

public sealed class TrailTests
{
    private static readonly Gen<double> Share = Gen.Double[0.01, 1];
    private static readonly Gen<double> Seconds = Gen.Double[0.1, 900];

    [Fact]
    public void Retakes_CanBeRedone() => Gen.Select(Share, Gen.Int[1, 4], Gen.Int[1, 30].Nullable(), Gen.Int[1, 9]).Sample((p, k, most, frames) =>
        Redone((ref StepTrail trail) =>
            RetakeOdds.Evaluate(new() { KeeperChance = p, Keepers = k, MostTries = most, FramesPerTry = frames }, ref trail)));

    [Fact]
    public void Plates_CanBeRedone() => Gen.Select(Seconds, Seconds, Seconds, Seconds, Share).Sample((budget, carry, settle, frame, p) =>
        Redone((ref StepTrail trail) =>
        {
            PlateSurvival.Evaluate(new() { BudgetS = budget, CarryS = carry, SettleS = settle, FrameTimeS = frame, KeeperChance = p }, ref trail);
            FrameTime.Evaluate(frame, carry, settle, ref trail);
            Portions.Evaluate(new() { PlateChance = p, Confidence = 0.9, Pictures = 2 }, ref trail);
        }));

    [Fact]
    public void Rates_CanBeRedone() => Gen.Select(Seconds, Seconds, Seconds, Share).Sample((a, b, c, p) =>
        Redone((ref StepTrail trail) =>
        {
            QueueTimes.Servers(p / a, a * 0.9, 1, ref trail);
            QueueTimes.OneServer(p / a, a * 0.9, b, ref trail);
            ShotRate.LongRun(a, p, b, c, ref trail);
            ShotRate.PairWithoutBuffer(a, b, ref trail);
            FireLead.LeadS(a, a + b, c, b, ref trail);
            NormalWait.Evaluate(new() { ReadyS = 10 * a, ReadyDeviationS = b, LeadS = c, LeadDeviationS = p, BudgetS = b }, a, ref trail);
        }));

    [Fact]
    public void Quotes_CanBeRedone() => Gen.Select(Seconds, Seconds, Gen.Int[0, 30], Gen.Double[1, 2]).Sample((a, b, n, ratio) =>
        Redone((ref StepTrail trail) => QuoteSum.Evaluate(
            new() { FixedS = a, Setups = n, SetupS = b, Dishes = n, DishS = a, P90OverP50 = ratio, DayS = 36000 }, ref trail)));

    [Fact]
    public void MeanQuotes_CanBeRedone() => Gen.Select(Share, Gen.Int[1, 9], Gen.Int[1, 30], Gen.Double[0.5, 9]).Sample((p, tries, dishes, hours) =>
        Redone((ref StepTrail trail) => QuoteMean.Evaluate(
            new()
            {
                Dishes = dishes, KeeperChance = new(p, Basis.Assumption), MostTries = new(tries, Basis.Assumption),
                HoursBetweenBreaks = new(hours, Basis.Assumption),
            },
            ref trail)));

    [Fact]
    public void Handovers_CanBeRedone() => Gen.Select(Gen.Int[0, 5000], Seconds, Share, Gen.Int[1, 4]).Sample((frames, size, share, copies) =>
        Redone((ref StepTrail trail) =>
        {
            HandoverPlan.Evaluate(
                new() { Frames = frames, FrameMb = size, CardGb = 64, CardFillShare = share, Copies = copies, CopyMbPerS = 90, UploadMb = size }, ref trail);
            CircuitLoad.Evaluate(new() { PowerW = 10 * size, VoltageV = 230, BreakerA = 16, PowerFactor = share }, ref trail);
        }));

    private delegate void Sum(ref StepTrail trail);

    private static void Redone(Sum sum)
    {
        var trail = StepTrail.Start();
        sum(ref trail);
        Trails.Redo(trail.Steps);
    }
}

using CsCheck;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class HandoverAndCircuitTests
{
    [Fact]
    public void SentFrames_NeedALine()
    {
        var request = Examples.Handover();
        request.ClearLineMbitPerS();
        Assert.Equal([("line_mbit_per_s", "REQUIRED")], Calls.Refused(() => Calls.ShootPlan.EstimateHandover(request)));
        request.SentFrames = 0;
        Assert.Equal(0, Calls.Number(Calls.ShootPlan.EstimateHandover(request).Upload));
    }

    [Fact]
    public void Handover_TellsCardsCopiesAndUpload()
    {
        var answer = Calls.ShootPlan.EstimateHandover(Examples.Handover());
        Assert.Equal((929u, 2u, 86800), (answer.FramesPerCard, answer.Cards, answer.DataMb));
        Assert.Equal(2 * 86800 / 180.0, Calls.Number(answer.Backup), 1e-9);
        Assert.Equal(8 * 24 * 18 / 20.0, Calls.Number(answer.Upload), 1e-9);
    }

    [Fact]
    public void CopiesSideBySide_TakeTheTimeOfOne()
    {
        var request = Examples.Handover();
        request.CopiesSideBySide = true;
        var both = Calls.ShootPlan.EstimateHandover(request).Backup;
        (request.CopiesSideBySide, request.Copies) = (false, 1);
        Assert.Equal(both, Calls.ShootPlan.EstimateHandover(request).Backup);
    }

    [Fact]
    public void CardTooSmall_HasNoNumberOfCards()
    {
        var request = Examples.Handover();
        (request.CardGb, request.FrameMb) = (0.1, 2000);
        var answer = Calls.ShootPlan.EstimateHandover(request);
        Assert.Equal((false, 0u), (answer.HasCards, answer.FramesPerCard));
    }

    [Fact]
    public void Portions_CountStandInsAndSpares()
    {
        var answer = Calls.ShootPlan.EstimatePortions(Examples.Portions());
        Assert.Equal((5u, 4u, 2u), (answer.Plates, answer.FreshPlates, answer.SparePlates));
        Assert.Equal(1 - Math.Pow(0.3, 4) - 4 * 0.7 * Math.Pow(0.3, 3), answer.ReachedChance, 1e-12);
    }

    [Fact]
    public void Portions_BeyondAThousandPlates_AreRefused() => Assert.Equal(
        [("plate_chance", "OUT_OF_RANGE")],
        Calls.Refused(() => Calls.ShootPlan.EstimatePortions(new() { PlateChance = 0.01, Pictures = 100 })));

    [Fact]
    public void Circuit_Overloaded_TellsTheFewestDevicesToTakeOff()
    {
        var answer = Calls.ShootPlan.CheckCircuit(Examples.Circuit());
        Assert.Equal((false, 3015 / 230.0, 12.8), (answer.IsWithin, answer.CurrentA, answer.UsableA));
        Assert.Equal(12.8 * 230 - 3015, answer.HeadroomW, 1e-9);
        Assert.Equal([("laptop", 1u)], answer.TakeOff.Select(off => (off.Name, off.Count)));
    }

    [Fact]
    public void TakeOff_LeavesWhatIsWithin_AndOneDeviceLessDoesNot() =>
        Gen.Select(Gen.Int[0, 2000].Array[1, 5], Gen.Int[1, 4].Array[5], Gen.Double[1, 40]).Sample((powers, counts, breaker) =>
        {
            var request = new CheckCircuitRequest { MainsV = 230, BreakerA = breaker };
            request.Loads.Add(powers.Select((power, i) => new CircuitLoad { Name = $"load {i}", PowerW = power, Count = (uint)counts[i] }));
            var answer = Calls.ShootPlan.CheckCircuit(request);
            Assert.Equal(answer.IsWithin, answer.TakeOff.Count == 0);
            if (answer.IsWithin)
            {
                return;
            }

            foreach (var off in answer.TakeOff)
            {
                request.Loads.Single(load => load.Name == off.Name).PowerW *= 1 - off.Count / (double)request.Loads.Single(load => load.Name == off.Name).Count;
            }

            var rest = Calls.ShootPlan.CheckCircuit(request);
            Assert.True(rest.HeadroomW >= -1e-6);
            Assert.All(answer.TakeOff, off => Assert.True(rest.HeadroomW - off.PowerW / off.Count < 0));
        });
}

using CsCheck;
using StudioCalc.Maths;

namespace StudioCalc.Planning.Tests;

public sealed class HandoverTests
{
    private static readonly HandoverInput Day = new()
    {
        Frames = 1450, FrameMb = 62, CardGb = 64, Copies = 2, CopyMbPerS = 140, UploadMb = 3600, UploadMbitPerS = 40,
    };

    // 64,000 / 62 = 1032.3 frames to a card; 89,900 MB twice at 140 MB/s; 28,800 Mbit at 40.
    [Fact]
    public void Evaluate_OfADay_IsTheSumOnPaper()
    {
        var plan = Evaluate(Day);
        Assert.Equal((1032, 2), (plan.FramesPerCard, plan.Cards));
        Assert.Equal(89_900, plan.DataMb, 1e-9);
        Assert.Equal(2 * 89_900 / 140.0, plan.BackupS, 1e-9);
        Assert.Equal(720, plan.UploadS, 1e-9);
        Assert.Equal(89_900 / 140.0, Evaluate(Day with { CopiesSideBySide = true }).BackupS, 1e-9);
    }

    [Fact]
    public void Evaluate_OfACardThatHoldsNoFrame_TellsNoCards()
    {
        Assert.Null(Evaluate(Day with { FrameMb = 64_001 }).Cards);
        Assert.Equal(1450, Evaluate(Day with { FrameMb = 64_000 }).Cards);
        Assert.Equal(0, Evaluate(Day with { Frames = 0 }).Cards);
    }

    [Fact]
    public void Cards_HoldAllFramesAndNoneIsIdle() => Gen.Select(Gen.Int[1, 20_000], Gen.Double[1, 300], Gen.Double[0.3, 1]).Sample((frames, size, fill) =>
    {
        var plan = Evaluate(Day with { Frames = frames, FrameMb = size, CardFillShare = fill });
        Assert.True(plan.Cards * plan.FramesPerCard >= frames && (plan.Cards - 1) * plan.FramesPerCard < frames);
    });

    // 2,000 W at 230 V on 16 A, and on 120 V and 20 A with the share for continuous loads.
    [Fact]
    public void Circuit_OfALoad_HasCurrentAndHeadroom()
    {
        var europe = Load(new() { PowerW = 2000, VoltageV = 230, BreakerA = 16, UsableShare = 1 });
        Assert.Equal((2000 / 230.0, 16), (europe.CurrentA, europe.UsableA));
        Assert.Equal(16 * 230 - 2000, europe.HeadroomW, 1e-9);
        var america = Load(new() { PowerW = 2000, VoltageV = 120, BreakerA = 20 });
        Assert.Equal(16, america.UsableA, 1e-12);
        Assert.True(america.HeadroomA < 0);
        Assert.Equal(16 * 120 - 2000, america.HeadroomW, 1e-9);
        Assert.Equal(2000 / 120.0 / 0.6, Load(new() { PowerW = 2000, VoltageV = 120, BreakerA = 20, PowerFactor = 0.6 }).CurrentA, 1e-12);
    }

    private static CircuitLoad Load(CircuitInput input)
    {
        var none = new NoTrail();
        return CircuitLoad.Evaluate(input, ref none);
    }

    private static HandoverPlan Evaluate(HandoverInput input)
    {
        var none = new NoTrail();
        return HandoverPlan.Evaluate(input, ref none);
    }
}

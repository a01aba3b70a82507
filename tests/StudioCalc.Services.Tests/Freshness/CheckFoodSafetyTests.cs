using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class CheckFoodSafetyTests
{
    [Fact]
    public void Check_Example_TellsEachClockTheStrictestFirst()
    {
        var answer = Calls.Freshness.CheckFoodSafety(Examples.Safety());

        Assert.Equal(V1.SafetyState.Running, answer.State);
        Assert.Equal(["us-two-hours", "au-nz-2h-4h"], answer.Clocks.Select(clock => clock.RegimeId));
        var counted = 3600 - 900 * 8 / 21.0;
        Assert.All(answer.Clocks, clock => Assert.Equal(counted, clock.Counted.ToSeconds(), 1e-6));
        Assert.Equal(7200 - counted, answer.Clocks[0].Left.ToSeconds(), 1e-6);
        Assert.Equal(7200 - counted, answer.Clocks[1].LeftToChill.ToSeconds(), 1e-6);
        Assert.Null(answer.Clocks[0].LeftToChill);
        Assert.True(answer.NotForEating);
        Assert.Equal(["sesame", "wheat", "egg"], answer.DeclaredAllergens);
        Assert.Equal(SafetyRegimes.Version, answer.CatalogueVersion);
    }

    [Fact]
    public void Check_RegimesThatAreNotHeld_AreRefusedByFieldWithTheKnownOnes()
    {
        var request = Examples.Safety();
        request.RegimeIds.Add("two-hour-rule-of-my-aunt");
        request.RegimeIds.Insert(0, "US-TWO-HOURS");
        var error = Assert.Throws<RpcException>(() => Calls.Freshness.CheckFoodSafety(request));

        Assert.Equal([("regime_ids[0]", "UNKNOWN_MARK"), ("regime_ids[3]", "UNKNOWN_MARK")], Calls.Fields(error));
        Assert.All(SafetyRegimes.Ids, id => Assert.Contains(id, Calls.Describe(error), StringComparison.Ordinal));
        Assert.DoesNotContain("aunt", Calls.Describe(error), StringComparison.Ordinal);
    }

    [Fact]
    public void Check_NoRegimeNamed_AppliesOneAndNamesIt()
    {
        var request = Examples.Safety();
        request.RegimeIds.Clear();
        var clock = Assert.Single(Calls.Freshness.CheckFoodSafety(request).Clocks);

        // From 68 °C the clock that starts at 63 has the least time left.
        Assert.Equal(("uk-hot", "England, Wales and Northern Ireland"), (clock.RegimeId, clock.Jurisdiction));
        Assert.Equal(3600 - 900 * 5 / 21.0, clock.Counted.ToSeconds(), 1e-6);
    }

    [Fact]
    public void Check_OneRegimeOverAndOneUnknown_IsOver()
    {
        var request = Spell(8000, 22, "us-two-hours", "uk-cold", "au-nz-2h-4h");
        var answer = Calls.Freshness.CheckFoodSafety(request);

        Assert.Equal(V1.SafetyState.Over, answer.State);
        Assert.Equal(
            [V1.SafetyState.Over, V1.SafetyState.Unknown, V1.SafetyState.Running], answer.Clocks.Select(clock => clock.State));
        Assert.True(answer.NotForEating);
        Assert.Equal(0, answer.Clocks[0].Left.ToSeconds());
        Assert.Equal([V1.SafetyReason.OtherStart], answer.Clocks[1].Reasons);
        Assert.Null(answer.Clocks[1].Counted);
        Assert.Null(answer.Clocks[1].Left);
        Assert.All(answer.Clocks, clock => Assert.Equal("Discard it.", clock.Action));
    }

    [Fact]
    public void Check_OneRegimeRunningAndOneUnknown_IsUnknown()
    {
        var answer = Calls.Freshness.CheckFoodSafety(Spell(60, 22, "us-two-hours", "uk-cold"));
        Assert.Equal(V1.SafetyState.Unknown, answer.State);
        Assert.Empty(answer.Clocks[0].Action);
        Assert.NotEmpty(answer.Clocks[1].Action);
    }

    [Fact]
    public void Check_FoodForThePictureOnly_IsDiscardedWhateverTheClocksSay()
    {
        var request = Spell(60, 22, "us-two-hours", "uk-cold");
        request.NotForEating.Add(NotForEating.Sprayed);
        var answer = Calls.Freshness.CheckFoodSafety(request);
        Assert.True(answer.NotForEating);
        Assert.All(answer.Clocks, clock => Assert.Equal("Discard it.", clock.Action));
    }

    [Fact]
    public void Check_FoodThatARegimeIsFor_IsTold()
    {
        var request = Spell(60, 20, "us-food-code-4h-room");
        Assert.Equal([V1.SafetyReason.FoodNotTold], Calls.Freshness.CheckFoodSafety(request).Clocks[0].Reasons);
        request.Food.Add(V1.SafetyFood.CutOrOpened);
        request.WrittenProcedure = true;
        var clock = Calls.Freshness.CheckFoodSafety(request).Clocks[0];
        Assert.Equal((V1.SafetyState.Running, 14400.0), (clock.State, clock.Limit.ToSeconds()));
        Assert.Empty(clock.Reasons);
    }

    [Fact]
    public void Check_RoomHotterThanTheRegimeStandsFor_HasTheShorterLimit()
    {
        var request = Spell(60, 22, "us-two-hours");
        Assert.Equal([V1.SafetyReason.RoomNotTold], Calls.Freshness.CheckFoodSafety(request).Clocks[0].Reasons);
        request.AirCelsius = 35;
        var clock = Calls.Freshness.CheckFoodSafety(request).Clocks[0];
        Assert.Equal(3600, clock.Limit.ToSeconds());
        Assert.Equal([V1.SafetyReason.HotRoom], clock.Reasons);
    }

    [Fact]
    public void Check_NothingWrong_IsNotCalledUnfit() => Assert.False(Calls.Freshness.CheckFoodSafety(Spell(60, 22, "us-two-hours")).NotForEating);

    [Fact]
    public void Check_AnyAnswer_NeverSaysSafeOrFreeFrom()
    {
        foreach (var id in SafetyRegimes.Ids)
        {
            foreach (var celsius in new[] { 3.0, 22, 70 })
            {
                var text = Calls.Freshness.CheckFoodSafety(Spell(600, celsius, id)).ToString();
                Assert.DoesNotContain("is safe", text, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("free from", text, StringComparison.OrdinalIgnoreCase);
            }
        }
    }

    private static CheckFoodSafetyRequest Spell(int seconds, double celsius, params string[] regimes) => new()
    {
        Spells = { new V1.SafetySpell { Duration = new() { Seconds = seconds }, StartCelsius = celsius } },
        RegimeIds = { regimes },
    };
}

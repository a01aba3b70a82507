using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class SafetyClocksTests
{
    private static readonly SafetyFacts Facts = new(22, true, Enum.GetValues<SafetyFood>());

    private static readonly Gen<SafetySpell[]> Courses =
        Gen.Select(Gen.Double[0, 9000], Gen.Double[-20, 90], Gen.Double[-20, 90]).Select((s, a, b) => new SafetySpell(s, a, b)).Array[1, 8];

    [Fact]
    public void TimeBetween_RandomRuns_IsWhatManySmallStepsSum() => Courses.Sample(
        spells =>
        {
            var clock = SafetyClocks.Run(Regime("au-nz-2h-4h"), spells, Facts);
            const int steps = 20000;
            var sum = 0.0;
            foreach (var spell in spells)
            {
                for (var i = 0; i < steps; i++)
                {
                    var celsius = spell.StartCelsius + (spell.EndCelsius - spell.StartCelsius) * (i + 0.5) / steps;
                    sum += celsius is > 5 and < 60 ? spell.DurationS / steps : 0;
                }
            }

            Assert.Equal(sum, clock.CountedS!.Value, 9000.0 / steps * 2 * spells.Length);
        },
        iter: 200);

    [Fact]
    public void Run_SpellsCutInTwo_StaysAsItIs() => Gen.Select(Courses, Gen.Double[0.05, 0.95]).Sample((spells, share) =>
    {
        SafetySpell[] cut =
        [
            .. spells.SelectMany(spell =>
            {
                var middle = spell.StartCelsius + share * (spell.EndCelsius - spell.StartCelsius);
                return new[]
                {
                    new SafetySpell(share * spell.DurationS, spell.StartCelsius, middle),
                    new SafetySpell((1 - share) * spell.DurationS, middle, spell.EndCelsius),
                };
            }),
        ];
        foreach (var regime in SafetyRegimes.All.Where(regime => !regime.IsOncePeriod))
        {
            var (whole, parts) = (SafetyClocks.Run(regime, spells, Facts), SafetyClocks.Run(regime, cut, Facts));
            Assert.Equal(whole.CountedS ?? -1, parts.CountedS ?? -1, 1e-6);
            Assert.Equal(whole.Reasons, parts.Reasons);
        }
    });

    [Fact]
    public void Run_MoreTimeAfterwards_NeverUndoesAnOverClock() => Gen.Select(Courses, Courses).Sample((spells, more) =>
    {
        foreach (var regime in SafetyRegimes.All)
        {
            var before = SafetyClocks.Run(regime, spells, Facts);
            var after = SafetyClocks.Run(regime, [.. spells, .. more], Facts);
            Assert.True(before.State != SafetyState.Over || after.State == SafetyState.Over, regime.Id);
        }
    });

    [Theory]
    [InlineData("au-nz-2h-4h", 14399, SafetyState.Running)]
    [InlineData("au-nz-2h-4h", 14400, SafetyState.Over)]
    [InlineData("us-two-hours", 7199, SafetyState.Running)]
    [InlineData("us-two-hours", 7200, SafetyState.Over)]
    [InlineData("us-food-code-4h-room", 14400, SafetyState.Over)]
    [InlineData("us-food-code-cooling-room", 14399, SafetyState.Running)]
    [InlineData("us-food-code-cooling-room", 14400, SafetyState.Over)]
    public void Run_AtRoomTemperature_IsOverAtTheLimit(string id, double seconds, SafetyState state) =>
        Assert.Equal(state, SafetyClocks.Run(Regime(id), [new(seconds, 20, 20)], Facts).State);

    [Fact]
    public void Run_TenthsOfSecondsThatSumToTheLimit_IsOver() => Assert.Equal(
        SafetyState.Over,
        SafetyClocks.Run(Regime("us-two-hours"), [.. Enumerable.Repeat(new SafetySpell(0.1, 20, 20), 72000)], Facts).State);

    [Theory]
    [InlineData(32.2222, 7200)]
    [InlineData(32.3, 3600)]
    public void Run_HotRoom_HasTheShorterLimit(double room, double limit) => Assert.Equal(
        limit, SafetyClocks.Run(Regime("us-two-hours"), [new(60, 20, 20)], Facts with { RoomCelsius = room }).LimitS);

    [Fact]
    public void Run_RoomNotTold_SaysSo()
    {
        var clock = SafetyClocks.Run(Regime("us-two-hours"), [new(60, 20, 20)], Facts with { RoomCelsius = null });
        Assert.Equal((7200, SafetyReason.RoomNotTold), (clock.LimitS, Assert.Single(clock.Reasons)));
    }

    [Theory]
    [InlineData("us-food-code-4h")]
    [InlineData("us-food-code-6h")]
    public void Run_NoWrittenProcedure_HasTwoHours(string id)
    {
        var clock = SafetyClocks.Run(Regime(id), [new(7200, 4, 4), new(60, 20, 20)], Facts with { HasWrittenProcedure = false });
        Assert.Equal((7200.0, SafetyState.Running, 60.0), (clock.LimitS, clock.State, clock.CountedS!.Value));
        Assert.Equal([SafetyReason.NoWrittenProcedure], clock.Reasons);
    }

    [Fact]
    public void Run_BackInTheCold_CountsOnForTimeAsAControlButNotForSummedTime()
    {
        SafetySpell[] takes = [new(3600, 20, 20), new(36000, 4, 4), new(1800, 20, 20)];
        Assert.Equal(5400, SafetyClocks.Run(Regime("us-two-hours"), takes, Facts).CountedS!.Value, 1e-9);
        Assert.Equal(
            41400, SafetyClocks.Run(Regime("us-food-code-4h"), [new(60, 5, 5), .. takes], Facts).CountedS!.Value, 1e-9);
    }

    [Theory]
    [InlineData(21, SafetyState.Running)]
    [InlineData(21.1, SafetyState.Over)]
    public void Run_ColdFoodEverAbove21_IsOver(double warmest, SafetyState state) => Assert.Equal(
        state, SafetyClocks.Run(Regime("us-food-code-6h"), [new(600, 4, warmest), new(600, 4, 4)], Facts).State);

    [Theory]
    [InlineData("us-food-code-4h", 30, SafetyReason.OtherStart)]
    [InlineData("us-food-code-6h", 70, SafetyReason.OtherStart)]
    [InlineData("uk-hot", 62.9, SafetyReason.OtherStart)]
    [InlineData("uk-cold", 8.1, SafetyReason.OtherStart)]
    public void Run_OtherStart_CannotTell(string id, double start, SafetyReason reason)
    {
        var clock = SafetyClocks.Run(Regime(id), [new(60, start, start)], Facts);
        Assert.Equal((SafetyState.Unknown, null, null, ""), (clock.State, clock.CountedS, clock.LeftS, clock.Action));
        Assert.Equal([reason], clock.Reasons);
    }

    [Fact]
    public void Run_FoodNotTold_CannotTell() => Assert.Equal(
        [SafetyReason.FoodNotTold],
        SafetyClocks.Run(Regime("us-food-code-roast"), [new(60, 60, 60)], Facts with { Food = [] }).Reasons);

    [Fact]
    public void Run_SecondPeriodBelow63_IsOver()
    {
        SafetySpell[] once = [new(600, 65, 62), new(600, 62, 63), new(600, 63, 60)];
        Assert.Equal(SafetyState.Running, SafetyClocks.Run(Regime("uk-hot"), once, Facts).State);
        var twice = SafetyClocks.Run(Regime("uk-hot"), [new(600, 65, 62), new(600, 64, 64), new(60, 62, 62)], Facts);
        Assert.Equal((SafetyState.Over, SafetyReason.SecondPeriod), (twice.State, Assert.Single(twice.Reasons)));
    }

    [Fact]
    public void Run_HeldHot_RunsUntilItLeaves()
    {
        Assert.Equal(SafetyState.Running, SafetyClocks.Run(Regime("us-food-code-hot"), [new(9000, 57, 57)], Facts).State);
        Assert.Equal(SafetyState.Over, SafetyClocks.Run(Regime("us-food-code-hot"), [new(60, 57, 56.9)], Facts).State);
        Assert.Equal(SafetyState.Running, SafetyClocks.Run(Regime("us-food-code-roast"), [new(60, 57, 54)], Facts).State);
        Assert.Equal(SafetyState.Over, SafetyClocks.Run(Regime("us-food-code-cold"), [new(60, 5, 5.1)], Facts).State);
    }

    [Theory]
    [InlineData(6332.5, SafetyState.Over)]
    [InlineData(6331.5, SafetyState.Running)]
    public void Run_CoolingWithATimeConstant_IsOverWhereTheSumSays(double tau, SafetyState state) => Assert.Equal(
        state, SafetyClocks.Run(Regime("us-food-code-cooling-1"), Newton(57, 4, tau, 9000), Facts).State);

    [Theory]
    [InlineData(6554.2, SafetyState.Over)]
    [InlineData(6553.2, SafetyState.Running)]
    public void Run_CoolingToTheEnd_IsOverWhereTheSumSays(double tau, SafetyState state) => Assert.Equal(
        state, SafetyClocks.Run(Regime("us-food-code-cooling-2"), Newton(57, 3, tau, 30000), Facts).State);

    [Fact]
    public void Run_CookedFood_CountsFrom57Down()
    {
        var clock = SafetyClocks.Run(Regime("us-food-code-cooling-1"), [new(3600, 90, 57), new(3600, 57, 30)], Facts);
        Assert.Equal((SafetyState.Running, 3600.0, 3600.0), (clock.State, clock.CountedS!.Value, clock.LeftS!.Value));
        Assert.Equal(0, SafetyClocks.Run(Regime("us-food-code-cooling-1"), [new(3600, 90, 60)], Facts).CountedS);
    }

    [Fact]
    public void Run_CooledInTime_StopsAndCannotTellOnceWarmAgain()
    {
        SafetySpell[] cooled = [new(3600, 57, 21), new(7200, 21, 4)];
        var clock = SafetyClocks.Run(Regime("us-food-code-cooling-1"), cooled, Facts);
        Assert.Equal((SafetyState.Running, 3600.0), (clock.State, clock.CountedS!.Value));
        Assert.Equal([SafetyReason.Cooled], clock.Reasons);
        Assert.Equal(
            [SafetyReason.WarmedAgain],
            SafetyClocks.Run(Regime("us-food-code-cooling-2"), [.. cooled, new(60, 4, 20)], Facts).Reasons);
    }

    [Fact]
    public void Run_NoRegimeNamed_TakesTheStrictestThatCanTell() => Gen.Select(Courses, Gen.Bool, Gen.Double[-5, 45]).Sample((spells, written, room) =>
    {
        var facts = new SafetyFacts(room, written, []);
        var one = Assert.Single(SafetyClocks.Run(spells, facts, []));
        Assert.NotEqual(SafetyState.Unknown, one.State);
        foreach (var id in SafetyRegimes.Ids)
        {
            Assert.All(
                SafetyClocks.Run(spells, facts, [id]).Where(clock => clock.Regime is { IsTimeLimit: true, WithoutProcedureS: null } && clock.LeftS is not null),
                clock => Assert.True(clock.LeftS >= one.LeftS && clock.State <= one.State, id));
        }
    });

    [Fact]
    public void Run_SeveralRegimes_PutsTheStrictestFirst()
    {
        var clocks = SafetyClocks.Run([new(8000, 20, 20)], Facts, ["au-nz-2h-4h", "us-two-hours", "uk-hot", "us-food-code-cooling"]);
        Assert.Equal(
            ["us-two-hours", "uk-hot", "us-food-code-cooling-1", "us-food-code-cooling-2", "au-nz-2h-4h"], clocks.Select(clock => clock.Regime.Id));
        Assert.Equal((0.0, SafetyRegimes.All.Single(regime => regime.Id == "au-nz-2h-4h").ActionLate), (clocks[^1].LeftToChillS, clocks[^1].Action));
    }

    private static SafetyRegime Regime(string id) => SafetyRegimes.All.Single(regime => regime.Id == id);

    private static SafetySpell[] Newton(double start, double air, double tau, double seconds)
    {
        const double step = 60;
        double At(double time) => air + (start - air) * Math.Exp(-time / tau);
        return [.. Enumerable.Range(0, (int)(seconds / step)).Select(i => new SafetySpell(step, At(i * step), At((i + 1) * step)))];
    }
}

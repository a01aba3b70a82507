namespace StudioCalc.Maths.Tests;

public sealed class SafetyRegimesTests
{
    private const string Header =
        "id,regime_id,name,jurisdiction,is_time_limit,count,above_celsius,below_celsius,limit_s,hot_room_celsius,hot_room_limit_s,"
        + "without_procedure_s,start_at_most_celsius,start_at_least_celsius,never_above_celsius,is_once_period,food,chill_limit_s,"
        + "action_running,action_late,action_over,source_kind,source\n";

    private const string Row = "a,a,A rule,Nowhere,yes,TimeBetween,5,60,7200,30,3600,1800,5,57,70,no,Roast,900,Go on,Use it,Discard it,Standard,A code\n";

    [Fact]
    public void Read_ARow_KeepsEveryValue() => Assert.Equal(
        [
            new("a", "a", "A rule", "Nowhere", true, SafetyCount.TimeBetween, 5, 60, 7200, new(30, 3600), 1800, 5, 57, 70, false,
                SafetyFood.Roast, 900, "Go on", "Use it", "Discard it", SourceKind.Standard, "A code"),
        ],
        SafetyRegimes.Read(Header + Row));

    [Theory]
    [InlineData("7200", "-1", "limit_s")]
    [InlineData("7200", "", "limit_s")]
    [InlineData("30,3600", "30,", "hot_room_limit_s")]
    [InlineData("30,3600", "30,7200", "hot_room_limit_s")]
    [InlineData("1800", "7200", "without_procedure_s")]
    [InlineData("Use it", "", "chill_limit_s")]
    [InlineData(",900,", ",7200,", "chill_limit_s")]
    [InlineData("5,60", "60,60", "below_celsius")]
    [InlineData("TimeBetween,5,60", "CoolingFrom,5,", "cooling")]
    [InlineData("TimeBetween,5,60", "CoolingFromStart,,60", "cooling")]
    [InlineData("TimeBetween", "Sum", "count")]
    [InlineData("Discard it", "", "action_over")]
    [InlineData("A code", "", "source")]
    public void Read_RowThatContradictsItself_IsRefused(string good, string bad, string message)
    {
        var row = Row.Replace(good, bad, StringComparison.Ordinal);
        Assert.NotEqual(Row, row);
        Assert.Contains(
            message, Assert.Throws<InvalidDataException>(() => SafetyRegimes.Read(Header + row)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_BuiltIn_NeverCallFoodSafe() => Assert.All(
        SafetyRegimes.All.SelectMany(regime => new[] { regime.Name, regime.ActionRunning, regime.ActionLate ?? "", regime.ActionOver }),
        text => Assert.DoesNotContain("safe", text, StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void All_BuiltIn_HoldOneTimeLimitForAnyFoodAtAnyStart() => Assert.Contains(
        SafetyRegimes.All,
        regime => regime is { IsTimeLimit: true, WithoutProcedureS: null, StartAtMostCelsius: null, StartAtLeastCelsius: null, Food: null });
}

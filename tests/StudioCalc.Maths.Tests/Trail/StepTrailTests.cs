namespace StudioCalc.Maths.Tests;

public sealed class StepTrailTests
{
    [Fact]
    public void Let_Formula_KeepsItsTextAndValue()
    {
        var trail = StepTrail.Start();
        trail.Section("a part");
        var u = trail.Given("u", 3, "mm", "a field");
        var v = trail.Let("v", u * u + 1, "mm²", "(1)", "answer.v");
        Assert.Equal(10, v);
        Assert.Equal(
            [
                new("a part", "u", "", 3, "mm", "a field", ""),
                new("a part", "v", "u * u + 1", 10, "mm²", "(1)", "answer.v"),
            ],
            trail.Steps);
    }

    [Fact]
    public void NoTrail_AnyStep_GivesTheValueBack()
    {
        var none = default(NoTrail);
        none.Section("a part");
        Assert.Equal(3, none.Given("u", 3, "mm", "a field"));
        Assert.Equal(4, none.Let("v", 4, "mm", "(1)"));
    }

    [Fact]
    public void Evaluate_SettingsWithATrail_WritesTheSum()
    {
        var trail = StepTrail.Start();
        SettingsExposure.Evaluate(new CameraSettings(8, 0.125, 200), 12.5, 250, ref trail);
        Assert.Equal(["N", "t", "S", "K", "C", "A", "T", "B", "E", "L", "Ev"], trail.Steps.Select(step => step.Symbol));
        var sum = trail.Steps.Single(step => step.Symbol == "B");
        Assert.Equal(("A + T", 9, "settings.exposure_value_stops"), (sum.Expression, sum.Value, sum.AnswerField));
    }

    [Fact]
    public void Evaluate_WithAndWithoutATrail_AgreesToTheLastBit()
    {
        var none = default(NoTrail);
        var trail = StepTrail.Start();
        foreach (var variable in Enum.GetValues<BalanceVariable>())
        {
            var input = Inputs.Example;
            Assert.Equal(Balance.Solve(input, variable, ref none), Balance.Solve(input, variable, ref trail));
        }
    }
}

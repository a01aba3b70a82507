using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>A plan is the answers of its parts, put together.</summary>
public sealed class PlanShootTests
{
    [Fact]
    public void Parts_AreAnsweredAsTheirOwnCallsAre()
    {
        var request = Examples.Plan();
        var plan = Calls.ShootPlan.PlanShoot(request);
        Assert.Equal(Calls.FillPlacement.PlanFill(request.Setups[0].Fill).Plan, plan.Setups[0].Fill.Plan);
        Assert.Equal(Calls.Exposure.SolveExposure(request.Setups[0].Exposure).Solution, plan.Setups[0].Exposure.Solution);
        Assert.Equal(Calls.PlateView.EvaluateView(request.Shots[0].View).Components, plan.Shots[0].View.Components);
        Assert.Equal(Calls.DepthOfField.PlaceFocus(request.Shots[0].Focus).Solution, plan.Shots[0].Focus.Solution);
        Assert.Equal(Calls.Freshness.CheckBudget(request.Shots[0].Budget).AllHoldChance, plan.Shots[0].Budget.AllHoldChance);
        Assert.Equal("Noodles and mezze, day one", plan.Title);
        Assert.Equal(("lamb noodles, low and close", "window and octabox"), (plan.Shots[0].Name, plan.Shots[0].Setup));
    }

    [Fact]
    public void DemoDay_KeepsEveryBudget_AndEveryShotStandsInItOnce()
    {
        var request = Examples.Plan();
        var order = Calls.ShootPlan.PlanShoot(request).Order.Solution;
        Assert.Equal(request.Day.Shots.Select(shot => shot.Name).Order(StringComparer.Ordinal), order.Shots.Select(shot => shot.Name).Order(StringComparer.Ordinal));
        Assert.All(order.Plates.SelectMany(plate => plate.Budgets), budget => Assert.True(budget.SlackS >= 0, budget.Component));
        Assert.Equal(0, order.BudgetExcessS);
    }

    [Fact]
    public void BudgetThatCannotHold_TellsThePlateAndByHowMuch()
    {
        var request = SmallDay.Plan();
        request.Day.Plates[0].Budgets[0].Limit = SmallDay.Seconds(200);
        var order = Calls.ShootPlan.PlanShoot(request).Order;
        var never = Assert.Single(order.NotReached.NeverFits);
        Assert.Equal(("noodles", "gloss", NeverFitsReason.Budget), (never.Plate, never.Component, never.Reason));
        Assert.Equal((300, 200, 100), (never.Least.Seconds, never.Limit.Seconds, never.Missing.Seconds));
    }

    [Fact]
    public void OrderAndThroughput_AreThoseOfTheirCalls()
    {
        var request = SmallDay.Plan();
        var plan = Calls.ShootPlan.PlanShoot(request);
        Assert.Equal(Calls.ShootPlan.SequenceShoot(new() { Day = request.Day }).Solution, plan.Order.Solution);
        Assert.Equal(
            Calls.ShootPlan.EstimateThroughput(new() { Day = request.Day, Replications = 100 }).Finish, plan.Throughput.Finish);
    }

    [Fact]
    public void FocusError_GivesTheChanceOfAFrame_AndTheFramesOfATry()
    {
        var request = Examples.Plan();
        var placed = Calls.DepthOfField.PlaceFocus(request.Shots[0].Focus).Solution;
        var error = request.Shots[0].FocusErrorMm;
        var planned = Calls.ShootPlan.PlanShoot(request).Shots[0];

        // Focus halfway between the ends of the main component's margins, by the normal distribution.
        var expected = Normal(placed.SlipBackMm / error) - Normal(-placed.SlipForwardMm / error);
        Assert.Equal(expected, planned.KeepChance, 1e-6);
        Assert.Equal(Math.Ceiling(Math.Log(0.05) / Math.Log(1 - expected)), planned.Frames);
    }

    [Fact]
    public void FocusError_TakesThePlaceOfTheChanceInTheDay()
    {
        var request = SmallDay.Plan();
        request.Shots.Add(new PlanShot { Shot = "noodles", Focus = Examples.Plan().Shots[0].Focus, FocusErrorMm = 0.1 });
        request.Day.Shots[0].Frames = new() { KeepChance = 0.001, MostTries = 1000 };
        var sure = Calls.ShootPlan.PlanShoot(request);
        request.Day.Shots[0].Frames.KeepChance = 1;
        Assert.Equal(sure, Calls.ShootPlan.PlanShoot(request));
        Assert.Equal(1, sure.Shots[0].KeepChance, 1e-9);
        Assert.Equal(1u, sure.Shots[0].Frames);
    }

    [Fact]
    public void FieldsOfParts_AreRefusedUnderTheirWholePath()
    {
        var request = Examples.Plan();
        request.Setups[1].Exposure.Camera.FastestShutterSpeed.Mark = "1/7777";
        request.Shots[0].Focus.Camera.Closeness = new() { SensorDistanceMm = 10 };
        request.Shots[0].Budget.Frames.StepIndex = 40;
        var fields = Calls.Refused(() => Calls.ShootPlan.PlanShoot(request)).Select(refused => refused.Field).ToList();
        Assert.Contains("setups[1].exposure.camera.fastest_shutter_speed.mark", fields);
        Assert.Contains("shots[0].budget.frames.step_index", fields);
        Assert.Contains(fields, field => field.StartsWith("shots[0].focus.camera.closeness", StringComparison.Ordinal));

        var streamed = Calls.Refused(() => Calls.ShootPlan.RenderCallSheet(new() { Plan = request })).Select(refused => refused.Field);
        Assert.Equal(fields.Select(field => "plan." + field), streamed);
    }

    [Fact]
    public void AdvisoriesOfParts_NameTheirWholePath()
    {
        var plan = Calls.ShootPlan.PlanShoot(Examples.Plan());
        var own = Calls.Freshness.CheckBudget(Examples.Plan().Shots[0].Budget).Advisories.Select(advisory => advisory.Field);
        Assert.Equal(
            own.Select(field => field.Length == 0 ? "shots[0].budget" : "shots[0].budget." + field),
            plan.Shots[0].Budget.Advisories.Select(advisory => advisory.Field));
    }

    [Fact]
    public void Names_ThatPointNowhereOrTwice_AreRefused()
    {
        var request = SmallDay.Plan();
        request.Setups.Add([new PlanSetup { Name = "window" }, new PlanSetup { Name = "window" }]);
        request.Shots.Add(
        [
            new PlanShot { Shot = "noodles", Setup = "door" },
            new PlanShot { Shot = "noodles" },
            new PlanShot { Shot = "soup", FocusErrorMm = 1 },
        ]);
        Assert.Equal(
            [
                ("setups[1].name", "CONFLICT"), ("shots[0].setup", "CONFLICT"), ("shots[1].shot", "CONFLICT"), ("shots[2].shot", "CONFLICT"),
                ("shots[2].focus_error_mm", "CONFLICT"),
            ],
            Calls.Refused(() => Calls.ShootPlan.PlanShoot(request)));
    }

    [Fact]
    public void Cautions_ComeFirst()
    {
        var advisories = Calls.ShootPlan.PlanShoot(Examples.Plan()).Advisories;
        var cautions = advisories.TakeWhile(one => one.Severity == AdvisorySeverity.Caution).Select(one => one.Code).ToList();
        Assert.DoesNotContain(advisories.Skip(cautions.Count), one => one.Severity == AdvisorySeverity.Caution);
        Assert.Equal(cautions.Distinct(), cautions);
        AdvisoryCode[] always =
        [
            AdvisoryCode.PlatesWait, AdvisoryCode.LooksNotSafety, AdvisoryCode.AllergensAsDeclared, AdvisoryCode.NotForEating,
            AdvisoryCode.FlashOnSet, AdvisoryCode.ElectricityOnSet, AdvisoryCode.CameraOverhead,
        ];
        Assert.Empty(always.Except(cautions));
    }

    [Fact]
    public void Samples_OfTheDay_AreOneDay()
    {
        Assert.Equal(Examples.Plan(), Examples.StreamedPlan().Plan);
        Assert.Equal(Examples.Plan(), Examples.CallSheet().Plan);
    }

    // Series of the error function, far beyond what is needed here.
    private static double Normal(double x)
    {
        var (sum, term) = (x, x);
        for (var i = 1; i < 200; i++)
        {
            term *= -x * x / (2 * i);
            sum += term / (2 * i + 1);
        }

        return 0.5 + sum / Math.Sqrt(2 * Math.PI);
    }
}

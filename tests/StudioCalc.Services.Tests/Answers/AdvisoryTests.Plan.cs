using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Plans of a day.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> PlanPairs = new()
    {
        [AdvisoryCode.FlashOnSet] = (
            () => Day(plan => plan.Setups.Add(new PlanSetup { Name = "octabox", Fill = Examples.Plan().Setups[0].Fill })),
            () => Day(plan => plan.Setups.Add(new PlanSetup { Name = "window" }))),
        [AdvisoryCode.ElectricityOnSet] = (() => Day(_ => { }), () => Day(Cold)),
        [AdvisoryCode.OverheadRigging] = (
            () => Day(plan => Angle(plan, "overhead")),
            () => Day(plan => Angle(plan, "low"))),
        [AdvisoryCode.FocusSeldomHolds] = (
            () => Day(plan => plan.Shots.Add(Focused("f/8"))),
            () => Day(plan => plan.Shots.Add(Focused("f/11")))),
    };

    private static void Cold(PlanShootRequest plan)
    {
        plan.Day.Crew = null;
        plan.Day.Plates[0].Budgets.Clear();
        plan.Day.Plates[0].Stages.RemoveAt(0);
    }

    private static void Angle(PlanShootRequest plan, string value)
    {
        plan.Day.Changes = new() { Attributes = { new AttributeChange { Name = "angle", Time = SmallDay.Seconds(60) } } };
        plan.Day.Shots[0].Attributes.Add(new SetAttribute { Name = "angle", Value = value });
    }

    private static PlanShot Focused(string mark)
    {
        var shot = new PlanShot { Shot = "noodles", Focus = Examples.Plan().Shots[0].Focus, FocusErrorMm = 9 };
        shot.Focus.Aperture = new() { Set = new() { Mark = mark } };
        return shot;
    }

    private static PlanShootResponse Day(Action<PlanShootRequest> change)
    {
        var request = SmallDay.Plan();
        change(request);
        return Calls.ShootPlan.PlanShoot(request);
    }
}

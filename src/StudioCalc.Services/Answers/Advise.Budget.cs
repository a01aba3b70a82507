using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Budgets.</content>
internal static partial class Advise
{
    public static Advisory BudgetBreaks(double chance) => Make(
        AdvisoryCode.BudgetBreaks,
        AdvisorySeverity.Warning,
        "In more than one draw of ten a component is past its look before the last frame. Cut a step, add the tightest component later, or plan a second plate.",
        "",
        ("all_hold_chance", chance));

    public static Advisory ComponentNeverHolds(string field) => Make(
        AdvisoryCode.ComponentNeverHolds,
        AdvisorySeverity.Warning,
        "This component holds in no draw. Start its clock later, refresh it, need it for a shorter time, or shoot it on a plate of its own.",
        field);

    public static Advisory RefreshKeepsSafetyClock() => Make(
        AdvisoryCode.RefreshKeepsSafetyClock,
        AdvisorySeverity.Caution,
        "A refresh restarts the clock of a look, never the clock of food safety, which runs on from when the food left the control of heat or cold. "
        + "With a torch or a spray can mind hair, sleeves, paper and the air that people breathe, and follow the maker's instructions.");

    public static Advisory NoHurry(double slackS) => Make(
        AdvisoryCode.NoHurry,
        AdvisorySeverity.Caution,
        "With likely times the food does not last to the last frame. No waiting plate is worth a hurried step: hot pans and plates, knives, glass, "
        + "stands and cables hurt who rushes. Take time out of the plan, or cook a second plate.",
        "",
        ("slack_s", slackS));
}

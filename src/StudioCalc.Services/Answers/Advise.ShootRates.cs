using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Promises, portions, handover and circuits.</content>
internal static partial class Advise
{
    public static Advisory PromiseRestsOnAssumptions(string field) => Make(
        AdvisoryCode.PromiseRestsOnAssumptions,
        AdvisorySeverity.Warning,
        "This promise at nine in ten rests at least in part on assumptions that nobody measured: say so wherever you show it. Put in times of "
        + "your own days, and their basis.",
        field);

    public static Advisory DishesDoNotFit(FieldPath field, double dishes, double fit) => Make(
        AdvisoryCode.DishesDoNotFit,
        AdvisorySeverity.Warning,
        "Fewer dishes than these fit the day with nine chances in ten. Promise fewer, plan a longer or a second day, or make the dishes quicker.",
        field.ToString(),
        ("dishes", dishes),
        ("dishes_that_fit", fit));

    public static Advisory LongDay(string field, double lengthS) => Make(
        AdvisoryCode.LongDay,
        AdvisorySeverity.Caution,
        "One day in ten is longer than this, and it is over twelve hours. Tired people get hurt, at the stove, under the lights and on the way home: "
        + "split the day, and follow the local rules on hours of work and rest.",
        field,
        ("length_s", lengthS));

    public static Advisory PlatesMayFailTogether(FieldPath field) => Make(
        AdvisoryCode.PlatesMayFailTogether,
        AdvisorySeverity.Note,
        "Plates are taken to fail each for itself. A dish that fails for its recipe, its light or its brief fails every time, and spares do not help: "
        + "cook one beforehand.",
        field.ToString());

    public static Advisory CardHoldsNoFrame(FieldPath field) => Make(
        AdvisoryCode.CardHoldsNoFrame,
        AdvisorySeverity.Warning,
        "The filled share of this card is smaller than a frame. Check that sizes are in the right units, or take a larger card.",
        field.ToString());

    public static Advisory OneCopyOnly(FieldPath field) => Make(
        AdvisoryCode.OneCopyOnly,
        AdvisorySeverity.Warning,
        "One copy beside the cards is lost with them where both travel together. Make a second one that stays elsewhere, and keep the cards "
        + "unformatted until both are checked (common practice).",
        field.ToString());

    public static Advisory CircuitOverloaded(double currentA, double usableA) => Make(
        AdvisoryCode.CircuitOverloaded,
        AdvisorySeverity.Caution,
        "The loads draw more than may be used of this circuit: cables and plugs can overheat and catch fire before a breaker trips. Take off what the answer "
        + "names, or spread the loads over circuits that an electrician has told apart. Never put in a larger fuse.",
        "",
        ("current_a", currentA),
        ("usable_a", usableA));

    public static Advisory ElectricianDecides() => Make(
        AdvisoryCode.ElectricianDecides,
        AdvisorySeverity.Caution,
        "A sum is no inspection: an electrician and the local code have the last word. Flash units draw far more while they recycle than on average, motors "
        + "and compressors when they start; sockets may share a circuit with the kitchen; cable reels must be unwound, and a residual-current device "
        + "belongs wherever there is water. Keep the makers' instructions.");

    public static Advisory PlateOftenBreaks(string field, double chance) => Make(
        AdvisoryCode.PlateOftenBreaks,
        AdvisorySeverity.Warning,
        "In more than one simulated day of ten a budget of this plate breaks. Let the photographer call for it, take fewer frames before its tightest "
        + "component, or have a spare on the stove; no waiting plate is worth a hurried step.",
        field,
        ("budget_break_chance", chance));

    public static Advisory HoursOftenMissed(double overHoursShare, double meanMissedShots) => Make(
        AdvisoryCode.HoursOftenMissed,
        AdvisorySeverity.Warning,
        "In more than one simulated day of ten work lies after hours, or a shot misses its own. Start earlier, take a shot out, or move those with hours "
        + "of their own towards the front.",
        "",
        ("over_hours_share", overHoursShare),
        ("mean_missed_shots", meanMissedShots));
}

using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>The order of a day.</content>
internal static partial class Advise
{
    public static Advisory OrderNotProved(long states) => Make(
        AdvisoryCode.OrderNotProved,
        AdvisorySeverity.Note,
        "This order is the best that was found, not proved to be the best there is; its end, its bound and the gap between them tell how far it "
        + "may be off. Raise the effort, or fix places and open hours, to know more.",
        "",
        ("states", states));

    public static Advisory DayOrderedInParts(int groups) => Make(
        AdvisoryCode.DayOrderedInParts,
        AdvisorySeverity.Note,
        "So many groups of shots were ordered in parts, each after the ones before it, split where the set rests or changes most. Plan long days "
        + "as two, or fix places, to have each proved.",
        "",
        ("groups", groups));

    public static Advisory DetourInChanges(string field, int from, int over, int to) => Make(
        AdvisoryCode.DetourInChanges,
        AdvisorySeverity.Warning,
        "By this table the set changes faster over a third shot than straight, so an order may put a shot in between for that alone. Look whether "
        + "the straight time is right.",
        field,
        ("from_index", from),
        ("over_index", over),
        ("to_index", to));

    public static Advisory PlatesWait(double longestWaitS) => Make(
        AdvisoryCode.PlatesWait,
        AdvisorySeverity.Caution,
        "Plates wait on clocks of their looks here. No waiting plate is worth a hurried step: hot pans and plates, knives, glass, stands and "
        + "cables hurt who rushes. Whoever is late says so, and the plate is made again.",
        "",
        ("longest_wait_s", longestWaitS));

    public static Advisory PlatesNotTimed(int plates) => Make(
        AdvisoryCode.PlatesNotTimed,
        AdvisorySeverity.Note,
        "Stand-ins and spares that no shot needs are not in these times and keep no station busy. Let the kitchen cook them where it has room.",
        "",
        ("plates", plates));

    public static Advisory OrderKept(double gainS) => Make(
        AdvisoryCode.OrderKept,
        AdvisorySeverity.Note,
        "The order so far is kept. Another would end the day a little earlier, by less than is asked for a change.",
        "",
        ("gain_s", gainS));

    public static Advisory PlatePastItsLook(string field, double leftS, double neededS) => Make(
        AdvisoryCode.PlatePastItsLook,
        AdvisorySeverity.Warning,
        "The look of this plate ends before the frames that need it, and nothing laid on anew helps. Take its frames now, or report it as lost and fire another: "
        + "the day is then planned for that.",
        field,
        ("left_s", leftS),
        ("needed_s", neededS));
}

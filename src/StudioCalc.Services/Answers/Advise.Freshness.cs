using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>How long food keeps its looks.</content>
internal static partial class Advise
{
    public static Advisory WindowFromPractice(string field) => Make(
        AdvisoryCode.WindowFromPractice,
        AdvisorySeverity.Note,
        "This time is common practice or memory, not computed from your food. Time a stand-in once and give its own window.",
        field);

    public static Advisory EvaporationAtItsEnd(string field, double celsius) => Make(
        AdvisoryCode.EvaporationAtItsEnd,
        AdvisorySeverity.Warning,
        "Over 90 °C the model holds evaporation at its value there: near boiling the first seconds run faster than told.",
        field,
        ("start_celsius", celsius));

    public static Advisory LooksNotSafety() => Make(
        AdvisoryCode.LooksNotSafety,
        AdvisorySeverity.Caution,
        "This tells how long food keeps its looks, never that it is safe to eat. Food between the limits of hot and cold holding is on a "
        + "clock of its own: check it apart, follow the local food code, and when in doubt throw it out.");

    public static Advisory NoDewForms(string field, double dewPointCelsius) => Make(
        AdvisoryCode.NoDewForms,
        AdvisorySeverity.Note,
        "The glass is not colder than the dew point, so no real dew forms. Chill it further or moisten the air; what is sprayed on instead may make "
        + "the drink unfit for drinking.",
        field,
        ("dew_point_celsius", dewPointCelsius));

    public static Advisory FilmTakesPlate(string field, double contactCelsius) => Make(
        AdvisoryCode.FilmTakesPlate,
        AdvisorySeverity.Warning,
        "Film and plate meet at this temperature at once, and it already lies beyond the set point: warm the plate.",
        field,
        ("contact_celsius", contactCelsius));

    public static Advisory WindowIsWait(string field) => Make(
        AdvisoryCode.WindowIsWait,
        AdvisorySeverity.Warning,
        "This time is a wait until the component looks right, not a time that its look lasts. In a budget it is a component's settling.",
        field);
}

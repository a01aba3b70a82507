using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Food safety, and what can hurt people about a plate.</content>
internal static partial class Advise
{
    private const string Defers =
        " The local food code comes first; ask a licensed food-safety professional, and when in doubt throw it out.";

    public static Advisory SafetyClockOver(string field, double countedS, double limitS) => Make(
        AdvisoryCode.SafetyClockOver,
        AdvisorySeverity.Caution,
        "This clock is over: discard the food, and let nobody taste it. Cooling or heating it again does not turn the clock back." + Defers,
        field,
        ("counted_s", countedS),
        ("limit_s", limitS));

    public static Advisory SafetyClockRunning(string field, double countedS, double leftS) => Make(
        AdvisoryCode.SafetyClockRunning,
        AdvisorySeverity.Caution,
        "This clock has time left. That says nothing about how the food was cooked, handled or stored before, and earlier takes count "
        + "with this one." + Defers,
        field,
        ("counted_s", countedS),
        ("left_s", leftS));

    public static Advisory SafetyClockUnknown(string field) => Make(
        AdvisoryCode.SafetyClockUnknown,
        AdvisorySeverity.Caution,
        "This regime cannot tell: its conditions do not fit what the request says of the food. Take that as no permission; tell more, or "
        + "name a regime that fits." + Defers,
        field);

    public static Advisory NotForEating(FieldPath field) => Make(
        AdvisoryCode.NotForEating,
        AdvisorySeverity.Caution,
        "This food is for the picture only, for good: nothing makes it fit for eating again. Label it, keep it and its tools away from "
        + "food that is to be eaten, and bin it after the shoot." + Defers,
        field.ToString());

    public static Advisory AllergensAsDeclared(FieldPath field) => Make(
        AdvisoryCode.AllergensAsDeclared,
        AdvisorySeverity.Caution,
        "These are the allergens as the kitchen declared them, no more. A swapped ingredient, a styling aid or a shared tool voids the "
        + "declaration: ask the kitchen again before anybody eats." + Defers,
        field.ToString());

    public static Advisory RegimeAssumed(FieldPath field) => Make(
        AdvisoryCode.RegimeAssumed,
        AdvisorySeverity.Caution,
        "No regime was named, so the strictest limit on time that is held was taken, wherever it is from. Other rules may apply where you "
        + "are." + Defers,
        field.ToString());

    public static Advisory HotPlates(string field) => Make(
        AdvisoryCode.HotPlates,
        AdvisorySeverity.Caution,
        "Heated plates, pans and stones burn and look no different from cold ones. Say so on the set, carry them in dry heatproof gloves, "
        + "rest them on a heatproof base away from cables and cloth, and keep a way clear. The makers' instructions and local rules for "
        + "safety at work come first.",
        field);

    public static Advisory GlassMayCrack(string field) => Make(
        AdvisoryCode.GlassMayCrack,
        AdvisorySeverity.Caution,
        "Glass that meets a sudden change of heat may crack or burst. Let it come near room temperature in between, keep it from lamps and "
        + "torches, check it for chips, and wear eye protection near it. Food or ice that a broken glass may have reached is discarded. "
        + "The makers' instructions and local rules for safety at work come first.",
        field);

    public static Advisory TorchOrAerosol(string field) => Make(
        AdvisoryCode.TorchOrAerosol,
        AdvisorySeverity.Caution,
        "Flames and aerosols do not go together: no spray near a torch, a hot lamp or a spark, and none into a flame. Air the room, clear "
        + "cloth and paper, keep an extinguisher at hand, and let a trained person hold the torch. Food that was sprayed with what is not "
        + "food is not for eating. The makers' instructions, the local fire rules and a licensed professional come first.",
        field);

    public static Advisory DryIce(string field) => Make(
        AdvisoryCode.DryIce,
        AdvisorySeverity.Caution,
        "Dry ice and liquid nitrogen burn skin by cold and drive out the air: the gas gathers low and may suffocate. Air the room well, wear "
        + "cold-proof gloves and eye protection, never close them into a vessel, a car or a cold room with people, and let nobody eat or "
        + "drink what still holds any. The supplier's safety sheet, local rules and a licensed professional come first.",
        field);
}

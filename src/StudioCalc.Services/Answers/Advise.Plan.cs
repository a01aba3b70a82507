using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>A day on the set.</content>
internal static partial class Advise
{
    public static Advisory FlashOnSet(FieldPath field) => Make(
        AdvisoryCode.FlashOnSet,
        AdvisorySeverity.Caution,
        "Flash is in use. Tell everybody before the first test, as flashes in a row can set off a seizure in people with photosensitive "
        + "epilepsy; keep it away from eyes at close range; and never open a head: its capacitors stay charged when it is unplugged. The "
        + "maker's instructions and local rules come first.",
        field.ToString());

    public static Advisory ElectricityOnSet() => Make(
        AdvisoryCode.ElectricityOnSet,
        AdvisorySeverity.Caution,
        "Water, steam and mains meet on this set. Feed it through a residual-current device, keep joints off the floor and away from sinks, "
        + "tape or ramp cables over walkways, and switch off before you move or open anything. An electrician has the last word, and the "
        + "local wiring rules.");

    public static Advisory OverheadRigging() => Make(
        AdvisoryCode.OverheadRigging,
        AdvisorySeverity.Caution,
        "Something hangs over the table in at least one shot. Put weight on the stand, tie camera, lens and arm with a safety line that holds "
        + "without the clamp, let nobody lean under it, and keep to the makers' loads. A licensed rigger and local rules come first where "
        + "anything hangs from the building.");

    public static Advisory FocusSeldomHolds(FieldPath field, double keepChance) => Make(
        AdvisoryCode.FocusSeldomHolds,
        AdvisorySeverity.Warning,
        "Even 1000 frames do not hold the main component once with 95 % confidence. Close the aperture, refocus for each frame, or bracket; the "
        + "day is simulated as if one try in a thousand did, where fewer do.",
        field.ToString(),
        ("keep_chance", keepChance));
}

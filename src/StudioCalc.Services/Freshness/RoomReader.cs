using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads the air of a room.</summary>
internal static class RoomReader
{
    private const double HottestVapourCelsius = 60;

    /// <summary>The room, or null after noting a bad field.</summary>
    /// <param name="context">Takes the notes.</param>
    /// <param name="air">The air; where it is needed and missing, that is noted.</param>
    /// <param name="hasVapour">Whether water evaporates or condenses.</param>
    /// <param name="path">The field of the air.</param>
    public static Room? ReadRoom(this RequestContext context, RoomAir? air, bool hasVapour, FieldPath path)
    {
        if (air is null)
        {
            NoteOnce(path, RefusalReason.Required, "This time is computed from the room: give the temperature and the humidity of its air.");
            return null;
        }

        var isTotal = air.HasTotalWPerM2K;
        var fits = true;
        if (air.HasConvectionWPerM2K && air.HasSpeedMPerS)
        {
            fits = Refuse(RoomAir.ConvectionWPerM2KFieldNumber, RefusalReason.Conflict, "The coefficient takes the place of the speed: leave one out.");
        }

        if (isTotal && (air.HasConvectionWPerM2K || air.HasSpeedMPerS))
        {
            fits = Refuse(RoomAir.TotalWPerM2KFieldNumber, RefusalReason.Conflict, "The whole loss has convection in it: leave one out.");
        }

        if (isTotal && air.HasWallsCelsius)
        {
            fits = Refuse(RoomAir.WallsCelsiusFieldNumber, RefusalReason.Conflict,
                "A coefficient of the whole loss has the walls in it: leave them out, or give the coefficient of convection.");
        }

        if (hasVapour && isTotal)
        {
            fits = Refuse(RoomAir.TotalWPerM2KFieldNumber, RefusalReason.Conflict,
                "Water comes on top of a coefficient of the whole loss: give the coefficient of convection, or a dry surface.");
        }

        if (hasVapour && air.TemperatureCelsius > HottestVapourCelsius)
        {
            fits = Refuse(RoomAir.TemperatureCelsiusFieldNumber, RefusalReason.OutOfRange,
                "Where water evaporates or condenses the air must be at most 60 °C: the vapour model ends there.");
        }

        if (!fits)
        {
            return null;
        }

        var (movement, value) = isTotal ? (AirMovement.Total, air.TotalWPerM2K)
            : air.HasConvectionWPerM2K ? (AirMovement.Convection, air.ConvectionWPerM2K)
            : (AirMovement.Speed, air.SpeedMPerS);
        return new(
            new(air.TemperatureCelsius, air.RelativeHumidity), air.HasWallsCelsius ? air.WallsCelsius : air.TemperatureCelsius, movement, value);

        bool Refuse(int field, RefusalReason reason, string text)
        {
            NoteOnce(path[field], reason, text);
            return false;
        }

        // Several components share one room.
        void NoteOnce(FieldPath field, RefusalReason reason, string text)
        {
            if (context.Violations.List.All(noted => noted.Field != field.ToString()))
            {
                context.Violations.Add(field.ToString(), reason, text);
            }
        }
    }
}

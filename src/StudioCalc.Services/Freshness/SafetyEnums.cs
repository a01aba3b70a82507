namespace StudioCalc.Services;

/// <summary>Choices of food safety between the maths and the contract.</summary>
internal static class SafetyEnums
{
    public static Maths.SafetyFood ToMaths(this V1.SafetyFood food) => food switch
    {
        V1.SafetyFood.CutOrOpened => Maths.SafetyFood.CutOrOpened,
        V1.SafetyFood.Roast => Maths.SafetyFood.Roast,
        V1.SafetyFood.OfRoomTemperature => Maths.SafetyFood.OfRoomTemperature,
        _ => throw new ArgumentOutOfRangeException(nameof(food)),
    };

    public static V1.SafetyState ToContract(this Maths.SafetyState state) => state switch
    {
        Maths.SafetyState.Running => V1.SafetyState.Running,
        Maths.SafetyState.Unknown => V1.SafetyState.Unknown,
        Maths.SafetyState.Over => V1.SafetyState.Over,
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    public static V1.SafetyReason ToContract(this Maths.SafetyReason reason) => reason switch
    {
        Maths.SafetyReason.OtherStart => V1.SafetyReason.OtherStart,
        Maths.SafetyReason.FoodNotTold => V1.SafetyReason.FoodNotTold,
        Maths.SafetyReason.WarmedAgain => V1.SafetyReason.WarmedAgain,
        Maths.SafetyReason.TooWarm => V1.SafetyReason.TooWarm,
        Maths.SafetyReason.SecondPeriod => V1.SafetyReason.SecondPeriod,
        Maths.SafetyReason.NoWrittenProcedure => V1.SafetyReason.NoWrittenProcedure,
        Maths.SafetyReason.HotRoom => V1.SafetyReason.HotRoom,
        Maths.SafetyReason.RoomNotTold => V1.SafetyReason.RoomNotTold,
        Maths.SafetyReason.Cooled => V1.SafetyReason.Cooled,
        _ => throw new ArgumentOutOfRangeException(nameof(reason)),
    };
}

namespace StudioCalc.Services;

/// <summary>Writes clocks of food safety.</summary>
internal static class SafetyWriter
{
    /// <summary>Writes a clock. For food that nobody may eat the action is that of a clock that is over.</summary>
    public static V1.SafetyClock Write(Maths.SafetyClock clock, bool isNotForEating)
    {
        var regime = clock.Regime;
        var written = new V1.SafetyClock
        {
            RegimeId = regime.RegimeId,
            Name = regime.Name,
            Jurisdiction = regime.Jurisdiction,
            State = clock.State.ToContract(),
            Reasons = { clock.Reasons.Select(reason => reason.ToContract()) },
            Counted = clock.CountedS?.ToDuration(),
            Limit = clock.LimitS.ToDuration(),
            Left = clock.LeftS?.ToDuration(),
            LeftToChill = clock.LeftToChillS?.ToDuration(),
            Action = isNotForEating ? regime.ActionOver : clock.Action,
            Source = regime.Source,
            SourceKind = regime.SourceKind.ToContract(),
        };
        if (regime.AboveCelsius is { } above)
        {
            written.AboveCelsius = above;
        }

        if (regime.BelowCelsius is { } below)
        {
            written.BelowCelsius = below;
        }

        if (regime.HotRoom is { } room)
        {
            written.HotRoomCelsius = room.AboveCelsius;
        }

        return written;
    }
}

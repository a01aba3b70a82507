namespace StudioCalc.Services;

/// <summary>Writes rows of the catalogue of holding profiles.</summary>
internal static class ProfileWriter
{
    public static V1.HoldingProfile Write(Maths.HoldingProfile profile)
    {
        var row = new V1.HoldingProfile
        {
            Id = profile.Id,
            Component = profile.Component,
            EndsBy = profile.EndsBy,
            ClockStart = Write(profile.ClockStart),
            Model = profile.Model.ToContract(),
            Window = Write(profile.Window),
            HalfLife = Write(profile.HalfLife),
            SourceKind = profile.SourceKind.ToContract(),
            Source = profile.Source,
            IsWait = profile.IsWait,
        };
        if (profile.SetPoint is { } band)
        {
            row.SetPoint = new()
            {
                PessimisticCelsius = band.PessimisticCelsius,
                LikelyCelsius = band.LikelyCelsius,
                OptimisticCelsius = band.OptimisticCelsius,
            };
        }

        if (profile.ShareLeft is { } share)
        {
            row.ShareLeft = share;
        }

        return row;
    }

    private static V1.HoldingSpan? Write(Maths.HoldingSpan? span) => span is not var (pessimistic, likely, optimistic)
        ? null
        : new() { Pessimistic = pessimistic.ToDuration(), Likely = likely.ToDuration(), Optimistic = optimistic.ToDuration() };

    private static V1.ClockStart Write(Maths.ClockStart start) => start switch
    {
        Maths.ClockStart.OffHeat => V1.ClockStart.OffHeat,
        Maths.ClockStart.OutOfCold => V1.ClockStart.OutOfCold,
        Maths.ClockStart.Poured => V1.ClockStart.Poured,
        Maths.ClockStart.Cut => V1.ClockStart.Cut,
        Maths.ClockStart.Garnished => V1.ClockStart.Garnished,
        Maths.ClockStart.Dressed => V1.ClockStart.Dressed,
        Maths.ClockStart.Uncovered => V1.ClockStart.Uncovered,
        _ => throw new ArgumentOutOfRangeException(nameof(start)),
    };
}

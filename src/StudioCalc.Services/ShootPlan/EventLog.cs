namespace StudioCalc.Services;

/// <summary>What has happened to plates and shots by now, in the order of the request's lists.</summary>
/// <param name="NowMs">Now. [ms]</param>
/// <param name="Plates">The plates.</param>
/// <param name="Shots">The shots.</param>
internal sealed record EventLog(long NowMs, IReadOnlyList<IReadOnlyList<PlateLife>> Plates, IReadOnlyList<ShotLog> Shots)
{
    /// <summary>The plate as it is now: not begun after a loss until it is fired again.</summary>
    public PlateLife Current(int plate) => Plates[plate][^1];
}

/// <summary>One making of a plate, as far as it was told. [ms]</summary>
internal sealed record PlateLife(long? FiredMs, long? LandedMs, long? LostMs)
{
    public bool IsTold => FiredMs is not null || LandedMs is not null;
}

/// <summary>What was told of a shot; what a loss of its plate undid is left out. [ms]</summary>
internal sealed record ShotLog(long? SettingMs, long? ShootingMs, long? ShotMs, long? ApprovedMs)
{
    /// <summary>When the set was changed for it, where a loss of its plate came after that.</summary>
    public long? IdleSettingMs { get; init; }

    /// <summary>Whether its frames are being taken or are taken.</summary>
    public bool IsTaken => ShootingMs is not null || ShotMs is not null || ApprovedMs is not null;

    /// <summary>The first moment at which its frames are known to have begun.</summary>
    public long? FirstMs => ShootingMs ?? ShotMs ?? ApprovedMs;
}

namespace StudioCalc.Photos;

/// <summary>How frames are told apart.</summary>
public sealed record PaceOptions
{
    /// <summary>Common practice, without a source: within a dish the camera seldom rests so long.</summary>
    public static readonly TimeSpan UsualGap = TimeSpan.FromMinutes(10);

    /// <summary>Longer than lunch.</summary>
    public static readonly TimeSpan UsualBreak = TimeSpan.FromHours(3);

    /// <summary>A rest of the camera from which on the next frame is of the next dish. Not used where dishes are named.</summary>
    public TimeSpan Gap { get; init; } = UsualGap;

    /// <summary>A rest of the camera that counts as no part of the shoot.</summary>
    public TimeSpan Break { get; init; } = UsualBreak;

    /// <summary>Names the dishes.</summary>
    public DishList? Dishes { get; init; }

    /// <summary>Names the frames that were kept; without it nothing is said about keeping.</summary>
    public NameList? Kept { get; init; }
}

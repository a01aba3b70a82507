using StudioCalc.V1;

namespace StudioCalc.Photos;

/// <summary>What is known beside the photos, and how much is done at once.</summary>
public sealed record PhotoOptions
{
    /// <summary>The size of the sensor, in either order; goes before what files say.</summary>
    public FrameSize? Sensor { get; init; }

    /// <summary>The blur that passes as sharp, as a diameter or a named share of the diagonal. Without it no depth of field is
    /// worked out: there is no default.</summary>
    public PermittedBlur? PermittedBlur { get; init; }

    /// <summary>How many photos are read and worked out at once, from 1.</summary>
    public int AtOnce
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "At least one photo at once.");
    } = Environment.ProcessorCount;
}

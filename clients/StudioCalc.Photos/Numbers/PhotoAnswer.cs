using StudioCalc.V1;

namespace StudioCalc.Photos;

/// <summary>What a photo says, and what is worked out from it. What could not be worked out is null, and a note tells why.</summary>
/// <param name="Photo">The photo.</param>
/// <param name="Facts">What it says about itself.</param>
public sealed record PhotoAnswer(PhotoFile Photo, PhotoFacts Facts)
{
    /// <summary>The sensor used.</summary>
    public PhotoSensor? Sensor { get; init; }

    /// <summary>Exposure values, and the marks behind the settings.</summary>
    public EvaluateExposureResponse? Exposure { get; init; }

    /// <summary>Field, angles and magnification at the photo's focus.</summary>
    public EvaluateFramingResponse? Framing { get; init; }

    /// <summary>Angles with the same lens focused at infinity.</summary>
    public EvaluateFramingResponse? FramingAtInfinity { get; init; }

    /// <summary>The sharp zone.</summary>
    public EvaluateDepthOfFieldResponse? DepthOfField { get; init; }

    /// <summary>All notes: those of the reading and those of the working out.</summary>
    public IReadOnlyList<PhotoNote> Notes { get; init; } = [];

    /// <summary>Whether the file could be read to the end of its metadata.</summary>
    public bool IsRead => !Notes.Any(note => note.IsUnread);
}

namespace StudioCalc.Photos;

/// <summary>What a photo says about itself. What it does not say, or not plausibly, is null, and a note tells why.</summary>
public sealed record PhotoFacts
{
    /// <summary>The kind of file, such as <c>JPEG</c>; null when it is not known.</summary>
    public string? Format { get; init; }

    /// <summary>Maker and model of the camera, as it writes them.</summary>
    public string? Camera { get; init; }

    /// <summary>The lens, as the camera writes it.</summary>
    public string? Lens { get; init; }

    /// <summary>The set f-number as written, without the noise of single precision.</summary>
    public double? FNumber { get; init; }

    /// <summary>The exposure time as written, in seconds.</summary>
    public double? ExposureTimeS { get; init; }

    /// <summary>The ISO speed.</summary>
    public double? Iso { get; init; }

    /// <summary>The focal length in millimetres.</summary>
    public double? FocalLengthMm { get; init; }

    /// <summary>The focal length that sees as much on 36 x 24 mm; cameras round it to whole millimetres.</summary>
    public double? EquivalentFocalLengthMm { get; init; }

    /// <summary>The distance of the subject in millimetres, as the camera gives it.</summary>
    public double? SubjectDistanceMm { get; init; }

    /// <summary>Whether the camera says that the subject is infinitely far.</summary>
    public bool IsFocusedAtInfinity { get; init; }

    /// <summary>Pixels of the file, along its width and height as stored; null where only the headers of a raw file say.</summary>
    public PixelSize? FilePixels { get; init; }

    /// <summary>Pixels that the camera wrote, along the stored width and height: swapped where a program has turned the picture.</summary>
    public PixelSize? CameraPixels { get; init; }

    /// <summary>Size of the sensor by the resolution of the focal plane, in millimetres along the stored width and height; null
    /// without a plausible one.</summary>
    public FrameSize? FocalPlaneSize { get; init; }

    /// <summary>When the photo was taken, by the camera's clock.</summary>
    public DateTime? CapturedAt { get; init; }

    /// <summary>The offset of that time from UTC.</summary>
    public TimeSpan? TimeOffset { get; init; }

    /// <summary>The orientation, 1 to 8, as Exif counts it.</summary>
    public int? Orientation { get; init; }

    /// <summary>Whether the picture is higher than wide when it is looked at.</summary>
    public bool IsUpright { get; init; }

    /// <summary>Why values are missing, and what to mind about those that are there.</summary>
    public IReadOnlyList<PhotoNote> Notes { get; init; } = [];
}

/// <summary>Pixels along width and height.</summary>
/// <param name="Wide">Along the width.</param>
/// <param name="High">Along the height.</param>
public readonly record struct PixelSize(int Wide, int High);

/// <summary>Width and height of a frame.</summary>
/// <param name="WidthMm">Its width in millimetres.</param>
/// <param name="HeightMm">Its height in millimetres.</param>
public readonly record struct FrameSize(double WidthMm, double HeightMm)
{
    /// <summary>The diagonal in millimetres.</summary>
    public double DiagonalMm => Math.Sqrt((WidthMm * WidthMm) + (HeightMm * HeightMm));
}

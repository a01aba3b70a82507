using System.Text.RegularExpressions;

namespace StudioCalc.Photos;

/// <summary>Something about a photo that a person or a program should know: why a value is missing, or what to mind.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Reason">What is the matter.</param>
/// <param name="Text">An English sentence, for display only.</param>
public sealed partial record PhotoNote(PhotoSubject Subject, PhotoReason Reason, string Text)
{
    /// <summary>Subject and reason as one stable text, such as <c>f-number:zero-over-zero</c>.</summary>
    public string Code => CodeOf(Subject, Reason);

    /// <summary>Whether it says that the file could not be read, or not to its end.</summary>
    public bool IsUnread => Subject == PhotoSubject.File
        && Reason is PhotoReason.Unreadable or PhotoReason.UnknownFormat or PhotoReason.Truncated or PhotoReason.Damaged or PhotoReason.TooLarge;

    internal static string CodeOf(PhotoSubject subject, PhotoReason reason) => $"{Kebab(subject.ToString())}:{Kebab(reason.ToString())}";

    internal static string Kebab(string pascal) => HumpStart().Replace(pascal, "-$0").ToLowerInvariant();

    [GeneratedRegex("(?<!^)[A-Z]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex HumpStart();
}

/// <summary>What a note is about.</summary>
public enum PhotoSubject
{
    /// <summary>The file as a whole.</summary>
    File,

    /// <summary>The set f-number.</summary>
    FNumber,

    /// <summary>The exposure time.</summary>
    ExposureTime,

    /// <summary>The ISO speed.</summary>
    Iso,

    /// <summary>The focal length.</summary>
    FocalLength,

    /// <summary>The focal length that sees as much on 36 x 24 mm.</summary>
    EquivalentFocalLength,

    /// <summary>The distance of the subject.</summary>
    SubjectDistance,

    /// <summary>Pixels a length of the sensor.</summary>
    FocalPlaneResolution,

    /// <summary>Width and height in pixels.</summary>
    Pixels,

    /// <summary>When the photo was taken.</summary>
    CaptureTime,

    /// <summary>The offset of that time from UTC.</summary>
    TimeOffset,

    /// <summary>How the camera was held.</summary>
    Orientation,

    /// <summary>The size of the sensor.</summary>
    Sensor,

    /// <summary>The exposure value.</summary>
    Exposure,

    /// <summary>Field, angle and magnification.</summary>
    Framing,

    /// <summary>The sharp zone.</summary>
    DepthOfField,

    /// <summary>The sidecar file.</summary>
    Sidecar,

    /// <summary>The list of kept photos.</summary>
    KeptList,

    /// <summary>The list of dishes.</summary>
    DishList,
}

/// <summary>What is the matter with a value or a file.</summary>
public enum PhotoReason
{
    /// <summary>It is not there.</summary>
    Missing,

    /// <summary>It is written as 0/0.</summary>
    ZeroOverZero,

    /// <summary>It is written as a number over 0.</summary>
    DivisionByZero,

    /// <summary>It is 0, where 0 has no meaning.</summary>
    Zero,

    /// <summary>It is below 0.</summary>
    Negative,

    /// <summary>It is beyond any value that is possible or that can be worked with.</summary>
    OutOfRange,

    /// <summary>It is no number.</summary>
    NotANumber,

    /// <summary>The camera says that it does not know.</summary>
    Unknown,

    /// <summary>The camera says that it is infinite.</summary>
    Infinite,

    /// <summary>The field is full: the true value stands elsewhere, or nowhere.</summary>
    FieldFull,

    /// <summary>Two fields give it differently.</summary>
    Conflict,

    /// <summary>It comes from its logarithmic (APEX) form.</summary>
    FromApex,

    /// <summary>It comes from another field than the usual one.</summary>
    FromOtherField,

    /// <summary>It is blank, or all zeros.</summary>
    Blank,

    /// <summary>It is written in a form that cannot be read.</summary>
    Malformed,

    /// <summary>The file has other pixels than the camera wrote, in the same proportions.</summary>
    Resized,

    /// <summary>The file has other proportions than the camera wrote.</summary>
    Cropped,

    /// <summary>No sensor could have such a size.</summary>
    Implausible,

    /// <summary>It comes from a rounded whole number.</summary>
    Rounded,

    /// <summary>The proportions are assumed.</summary>
    AspectAssumed,

    /// <summary>What was given and what the file says differ.</summary>
    GivenDiffers,

    /// <summary>No lens of this fixed focal length could focus so near.</summary>
    NearerThanLensFocuses,

    /// <summary>The subject distance is taken to count from the sensor.</summary>
    FromSensorAssumed,

    /// <summary>The permitted blur is not given.</summary>
    NoPermittedBlur,

    /// <summary>Another value that it needs is missing.</summary>
    NeedsOtherValue,

    /// <summary>The request was refused.</summary>
    Refused,

    /// <summary>It cannot be opened.</summary>
    Unreadable,

    /// <summary>Its kind is not known or not read.</summary>
    UnknownFormat,

    /// <summary>Its extension belongs to another kind.</summary>
    WrongExtension,

    /// <summary>It ends too early.</summary>
    Truncated,

    /// <summary>Its structure is broken.</summary>
    Damaged,

    /// <summary>It has more metadata than is read.</summary>
    TooLarge,

    /// <summary>It holds no metadata.</summary>
    NoMetadata,

    /// <summary>Two photos would share it.</summary>
    Shared,

    /// <summary>It is a link to another file.</summary>
    Link,

    /// <summary>It may not be written.</summary>
    ReadOnly,

    /// <summary>It has changed meanwhile.</summary>
    Changed,

    /// <summary>It names photos that are not among the frames.</summary>
    Unmatched,
}

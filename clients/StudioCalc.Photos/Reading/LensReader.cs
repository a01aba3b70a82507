using System.Globalization;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;

namespace StudioCalc.Photos;

/// <summary>Reads focal lengths and the subject distance.</summary>
internal static class LensReader
{
    private const int TagSubjectDistance = 0x9206;
    private const uint InfiniteNumerator = uint.MaxValue;
    private const double MillimetresInMetre = 1000;
    private const double NearestMm = 10;
    private const double FarthestMm = 1_000_000;

    public static PhotoFacts Read(PhotoFacts facts, Tags tags, List<PhotoNote> notes)
    {
        var focal = Known(tags.Number(ExifDirectoryBase.TagFocalLength).Within(1, 2000), PhotoSubject.FocalLength, "focal length", notes);
        var equivalent = Known(tags.Number(ExifDirectoryBase.Tag35MMFilmEquivFocalLength).Within(1, 3000), PhotoSubject.EquivalentFocalLength, "35 mm equivalent focal length", notes);
        var (distance, isInfinite) = Distance(tags, notes);
        return facts with { FocalLengthMm = focal, EquivalentFocalLengthMm = equivalent, SubjectDistanceMm = distance, IsFocusedAtInfinity = isInfinite };
    }

    private static double? Known(RawValue raw, PhotoSubject subject, string name, List<PhotoNote> notes)
    {
        if (raw.Value is { } value)
        {
            return RawValue.Clean(value);
        }

        notes.Fault(subject, name, raw);
        return null;
    }

    // Exif: a numerator of FFFFFFFF is infinite, one of 0 is unknown. Through single precision the first becomes 4294967296.
    private static (double? Mm, bool IsInfinite) Distance(Tags tags, List<PhotoNote> notes)
    {
        var field = tags.Raw(TagSubjectDistance);
        if (field is Rational { Numerator: -1 or InfiniteNumerator } || RawValue.Of(field).Value >= InfiniteNumerator)
        {
            notes.Add(PhotoSubject.SubjectDistance, PhotoReason.Infinite, "The camera gives the subject distance as infinite.");
            return (null, true);
        }

        if (field is Rational { Numerator: 0, Denominator: not 0 } || RawValue.Of(field).Value == 0)
        {
            notes.Add(PhotoSubject.SubjectDistance, PhotoReason.Unknown, "The camera gives the subject distance as unknown.");
            return (null, false);
        }

        var raw = RawValue.Of(field).Within(NearestMm / MillimetresInMetre, FarthestMm / MillimetresInMetre);
        if (raw.Value is { } metres)
        {
            notes.Add(PhotoSubject.SubjectDistance, PhotoReason.FromSensorAssumed, "The subject distance is taken to count from the sensor, as most cameras write it; Exif does not define it.");
            return (RawValue.Clean(metres * MillimetresInMetre), false);
        }

        if (raw.Fault == PhotoReason.OutOfRange)
        {
            notes.Add(PhotoSubject.SubjectDistance, PhotoReason.OutOfRange, string.Create(
                CultureInfo.InvariantCulture, $"The subject distance is written as {raw.Written} m; distances from {NearestMm:0} mm to {FarthestMm / MillimetresInMetre:0} m are worked with."));
        }
        else
        {
            notes.Fault(PhotoSubject.SubjectDistance, "subject distance", raw);
        }

        return (null, false);
    }
}

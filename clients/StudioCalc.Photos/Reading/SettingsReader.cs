using System.Globalization;
using MetadataExtractor.Formats.Exif;

namespace StudioCalc.Photos;

/// <summary>Reads f-number, exposure time and ISO.</summary>
internal static class SettingsReader
{
    private const int TagSensitivityType = 0x8830;
    private const int TagStandardOutputSensitivity = 0x8831;
    private const int TagRecommendedExposureIndex = 0x8832;
    private const int TagIsoSpeed = 0x8833;
    private const double FullField = 65535;
    private const double ConflictStops = 0.2;
    private const double MostIso = 10_000_000;

    public static PhotoFacts Read(PhotoFacts facts, Tags tags, List<PhotoNote> notes) => facts with
    {
        FNumber = Either(
            tags.Number(ExifDirectoryBase.TagFNumber).Within(0.5, 256),
            FromApex(tags.Number(ExifDirectoryBase.TagAperture), -2, 16, av => Math.Pow(2, av / 2)),
            PhotoSubject.FNumber, "f-number", stopsPerOctave: 2, notes),
        ExposureTimeS = Either(
            tags.Number(ExifDirectoryBase.TagExposureTime).Within(1e-6, 3600),
            FromApex(tags.Number(ExifDirectoryBase.TagShutterSpeed), -11.8, 20, tv => Math.Pow(2, -tv)),
            PhotoSubject.ExposureTime, "exposure time", stopsPerOctave: 1, notes),
        Iso = Iso(tags, notes),
    };

    // Additive values may be negative or 0; a fault of theirs counts only where there is nothing else.
    private static double? FromApex(RawValue raw, double lowest, double highest, Func<double, double> value) =>
        raw.Value is { } apex && apex >= lowest && apex <= highest ? value(apex) : null;

    private static double? Either(RawValue plain, double? apex, PhotoSubject subject, string name, double stopsPerOctave, List<PhotoNote> notes)
    {
        if (plain.Value is not { } value)
        {
            notes.Fault(subject, name, plain);
            if (apex is not null)
            {
                notes.Add(subject, PhotoReason.FromApex, $"The {name} comes from its logarithmic (APEX) form, {Show(apex.Value)}.");
            }

            return apex;
        }

        if (apex is { } other && Math.Abs(stopsPerOctave * Math.Log2(other / value)) > ConflictStops)
        {
            notes.Add(subject, PhotoReason.Conflict, $"The {name} is {Show(value)} in one field and {Show(other)} in its logarithmic (APEX) form; the first is taken.");
        }

        return RawValue.Clean(value);
    }

    private static double? Iso(Tags tags, List<PhotoNote> notes)
    {
        var plain = tags.Number(ExifDirectoryBase.TagIsoEquivalent).Within(1, MostIso);
        var wide = Wide(tags);
        if (plain.Value == FullField)
        {
            notes.Add(PhotoSubject.Iso, PhotoReason.FieldFull, wide is null
                ? "The ISO is written as 65535, which says that it does not fit, and no other field has it."
                : $"The ISO does not fit its field; another has {Show(wide.Value)}.");
            return wide;
        }

        if (plain.Value is { } iso)
        {
            if (wide is { } other && other != iso)
            {
                notes.Add(PhotoSubject.Iso, PhotoReason.Conflict, $"The ISO is {Show(iso)} in one field and {Show(other)} in another; the first is taken.");
            }

            return iso;
        }

        notes.Fault(PhotoSubject.Iso, "ISO", plain);
        if (wide is not null)
        {
            notes.Add(PhotoSubject.Iso, PhotoReason.FromOtherField, $"The ISO comes from the field of the exposure index or ISO speed, {Show(wide.Value)}.");
        }

        return wide;
    }

    // Which of the wide fields the ISO repeats is told by the kind of sensitivity; where that is not, the exposure index is meant.
    private static double? Wide(Tags tags)
    {
        int[] order = tags.Number(TagSensitivityType).Value switch
        {
            1 => [TagStandardOutputSensitivity, TagRecommendedExposureIndex, TagIsoSpeed],
            3 => [TagIsoSpeed, TagRecommendedExposureIndex, TagStandardOutputSensitivity],
            _ => [TagRecommendedExposureIndex, TagIsoSpeed, TagStandardOutputSensitivity],
        };
        return order.Select(tag => tags.Number(tag).Within(1, MostIso).Value).FirstOrDefault(value => value is not null);
    }

    private static string Show(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}

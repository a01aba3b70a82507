using System.Globalization;

namespace StudioCalc.Photos;

/// <summary>Finds the size of the sensor: the given one, else by the focal plane, else by the equivalent focal length. Two
/// sources that contradict each other give none.</summary>
internal static class SensorChoice
{
    private const double Diagonal36X24Mm = 43.266615305567875;
    private const double Tolerance = 0.08; // cameras round their focal plane and focal length
    private const double SmallestCrop = 0.35;
    private const double LargestCrop = 15;

    public static PhotoSensor? Of(PhotoFacts facts, FrameSize? given, List<PhotoNote> notes)
    {
        var crop = Crop(facts);
        if (given is { } size)
        {
            var turned = (facts.CameraPixels ?? facts.FilePixels) is { } pixels && pixels.High > pixels.Wide != size.HeightMm > size.WidthMm;
            if (crop is { } told && !told.Holds(size) || facts.FocalPlaneSize is { } plane && Math.Abs(plane.DiagonalMm / size.DiagonalMm - 1) > Tolerance)
            {
                notes.Add(PhotoSubject.Sensor, PhotoReason.GivenDiffers, Invariant($"The file speaks of a diagonal of {facts.FocalPlaneSize?.DiagonalMm ?? Diagonal36X24Mm / crop!.Value.Middle:0.#} mm, and the given sensor has {size.DiagonalMm:0.#} mm; the given one is used."));
            }

            return new(turned ? new(size.HeightMm, size.WidthMm) : size, SensorSource.Given);
        }

        if (facts.FocalPlaneSize is { } measured)
        {
            if (crop is not { } other || other.Holds(measured))
            {
                return new(measured, SensorSource.FocalPlane);
            }

            notes.Add(PhotoSubject.Sensor, PhotoReason.Conflict, Invariant($"By the focal plane resolution the sensor has a diagonal of {measured.DiagonalMm:0.#} mm, by the equivalent focal length {Diagonal36X24Mm / other.Middle:0.#} mm; neither is used. Give its size."));
            return null;
        }

        return crop is { } factor ? ByEquivalent(facts, factor, notes) : Unknown(notes);
    }

    private static PhotoSensor? ByEquivalent(PhotoFacts facts, CropRange crop, List<PhotoNote> notes)
    {
        if (crop.Middle is < SmallestCrop or > LargestCrop)
        {
            notes.Add(PhotoSubject.Sensor, PhotoReason.Implausible, Invariant($"By the equivalent focal length the crop factor would be {crop.Middle:G3}, which no sensor has."));
            return null;
        }

        notes.Add(PhotoSubject.Sensor, PhotoReason.Rounded, Invariant($"The sensor comes from an equivalent focal length rounded to whole millimetres: its size is known to {50 / facts.EquivalentFocalLengthMm!.Value:0.#} %."));
        var shape = (facts.CameraPixels ?? facts.FilePixels) is { } pixels ? (double)pixels.Wide / pixels.High : 0;
        if (shape is <= 0.2 or >= 5)
        {
            notes.Add(PhotoSubject.Sensor, PhotoReason.AspectAssumed, "The proportions of the sensor are taken as 3:2.");
            shape = 1.5;
        }

        var diagonal = Diagonal36X24Mm / crop.Middle;
        var height = diagonal / Math.Sqrt(1 + (shape * shape));
        return new(new(height * shape, height), SensorSource.Equivalent);
    }

    private static PhotoSensor? Unknown(List<PhotoNote> notes)
    {
        notes.Add(PhotoSubject.Sensor, PhotoReason.Missing, "The size of the sensor is not known: give it.");
        return null;
    }

    private static CropRange? Crop(PhotoFacts facts) => facts is { EquivalentFocalLengthMm: { } equivalent, FocalLengthMm: { } focal }
        ? new((equivalent - 0.5) / focal, equivalent / focal, (equivalent + 0.5) / focal)
        : null;

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private readonly record struct CropRange(double Lowest, double Middle, double Highest)
    {
        public bool Holds(FrameSize size) =>
            Diagonal36X24Mm / size.DiagonalMm is var crop && crop >= Lowest * (1 - Tolerance) && crop <= Highest * (1 + Tolerance);
    }
}

using System.Globalization;
using MetadataExtractor.Formats.Exif;

namespace StudioCalc.Photos;

/// <summary>Reads pixels, orientation, and the size of the sensor by the resolution of the focal plane.</summary>
internal static class FrameReader
{
    private const int TagXResolution = 0xA20E;
    private const int TagYResolution = 0xA20F;
    private const int TagUnit = 0xA210;
    private const int TagImageWidth = 0x0100;
    private const int TagImageHeight = 0x0101;
    private const int MostPixels = 100_000;
    private const double SmallestMm = 3;
    private const double LargestMm = 110;
    private const double SquareEnough = 0.1;
    private const double ShapeTolerance = 0.02;

    public static PhotoFacts Read(PhotoFacts facts, Tags tags, List<PhotoNote> notes)
    {
        var camera = Pixels(tags.Number(ExifDirectoryBase.TagExifImageWidth), tags.Number(ExifDirectoryBase.TagExifImageHeight));
        var file = FilePixels(facts.Format, tags);
        Compare(camera, file, notes);
        var orientation = Orientation(tags, notes);
        var plane = FocalPlane(tags, camera, notes);
        if (camera is { } written && file is { } stored && IsTurned(written, stored))
        {
            camera = new(written.High, written.Wide);
            plane = plane is { } size ? new(size.HeightMm, size.WidthMm) : null;
        }

        var upright = (camera ?? file) is { } pixels && pixels.High > pixels.Wide;
        return facts with
        {
            CameraPixels = camera,
            FilePixels = file,
            Orientation = orientation,
            IsUpright = upright ^ orientation >= 5,
            FocalPlaneSize = plane,
        };
    }

    private static PixelSize? FilePixels(string? format, Tags tags) => format switch
    {
        "JPEG" => Pixels(RawValue.Of(tags.Jpeg?.GetObject(MetadataExtractor.Formats.Jpeg.JpegDirectory.TagImageWidth)),
            RawValue.Of(tags.Jpeg?.GetObject(MetadataExtractor.Formats.Jpeg.JpegDirectory.TagImageHeight))),
        "TIFF" => Pixels(tags.Number(TagImageWidth), tags.Number(TagImageHeight)),
        _ => null,
    };

    private static PixelSize? Pixels(RawValue wide, RawValue high) =>
        wide.Within(1, MostPixels).Value is { } w && high.Within(1, MostPixels).Value is { } h ? new((int)w, (int)h) : null;

    private static void Compare(PixelSize? camera, PixelSize? file, List<PhotoNote> notes)
    {
        if (camera is not { } c)
        {
            notes.Add(PhotoSubject.Pixels, PhotoReason.Missing, "The camera's own width and height in pixels are missing.");
            return;
        }

        if (file is not { } f || f == c)
        {
            return;
        }

        var same = HasShape(f, c) || IsTurned(c, f);
        if (same && Math.Max(f.Wide, f.High) == Math.Max(c.Wide, c.High))
        {
            return;
        }

        notes.Add(PhotoSubject.Pixels, same ? PhotoReason.Resized : PhotoReason.Cropped, string.Create(CultureInfo.InvariantCulture,
            $"The camera wrote {c.Wide} x {c.High} pixels and the file has {f.Wide} x {f.High}; field and angle are those of the camera's picture."));
    }

    // A program that turns the picture swaps the sides of the file and leaves what the camera wrote.
    private static bool IsTurned(PixelSize camera, PixelSize file) => !HasShape(file, camera) && HasShape(file, new(camera.High, camera.Wide));

    private static bool HasShape(PixelSize one, PixelSize other) =>
        Math.Abs((double)one.Wide / one.High * other.High / other.Wide - 1) < ShapeTolerance;

    private static int? Orientation(Tags tags, List<PhotoNote> notes)
    {
        var raw = tags.Number(ExifDirectoryBase.TagOrientation).Within(1, 8);
        if (raw.Value is { } value)
        {
            return (int)value;
        }

        notes.Fault(PhotoSubject.Orientation, "orientation", raw);
        return null;
    }

    private static FrameSize? FocalPlane(Tags tags, PixelSize? camera, List<PhotoNote> notes)
    {
        var x = tags.Number(TagXResolution).Within(double.Epsilon, double.MaxValue);
        var y = tags.Number(TagYResolution).Within(double.Epsilon, double.MaxValue);
        if (x.Value is not { } across || y.Value is not { } down)
        {
            notes.Fault(PhotoSubject.FocalPlaneResolution, "focal plane resolution", x.Value is null ? x : y);
            return null;
        }

        double? unitMm = tags.Number(TagUnit).Value switch
        {
            null or 2 => 25.4, // the unit's default
            3 => 10,
            4 => 1,
            5 => 0.001,
            _ => null,
        };
        if (unitMm is null)
        {
            notes.Add(PhotoSubject.FocalPlaneResolution, PhotoReason.Malformed, "The focal plane resolution has no known unit.");
            return null;
        }

        if (camera is not { } pixels)
        {
            notes.Add(PhotoSubject.FocalPlaneResolution, PhotoReason.NeedsOtherValue, "The focal plane resolution tells the sensor only with the camera's pixels.");
            return null;
        }

        var size = new FrameSize(RawValue.Clean(pixels.Wide / across * unitMm.Value), RawValue.Clean(pixels.High / down * unitMm.Value));
        var isSquare = Math.Abs(across / down - 1) < SquareEnough;
        if (isSquare && Math.Min(size.WidthMm, size.HeightMm) >= SmallestMm / 2 && Math.Max(size.WidthMm, size.HeightMm) is >= SmallestMm and <= LargestMm)
        {
            return size;
        }

        notes.Add(PhotoSubject.FocalPlaneResolution, PhotoReason.Implausible, string.Create(CultureInfo.InvariantCulture,
            $"By the focal plane resolution the sensor would be {size.WidthMm:G3} x {size.HeightMm:G3} mm, which none is: the pixels were changed, or the resolution is wrong."));
        return null;
    }
}

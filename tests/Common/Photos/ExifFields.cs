using System.Buffers.Binary;
using System.Text;

namespace StudioCalc.Tests;

/// <summary>Writes the metadata of a photo, good or bad, as Exif and TIFF lay it out.</summary>
internal sealed class ExifFields
{
    public const ushort FNumber = 0x829D;
    public const ushort ExposureTime = 0x829A;
    public const ushort Iso = 0x8827;
    public const ushort SensitivityType = 0x8830;
    public const ushort RecommendedExposureIndex = 0x8832;
    public const ushort IsoSpeed = 0x8833;
    public const ushort TakenAt = 0x9003;
    public const ushort DigitizedAt = 0x9004;
    public const ushort Offset = 0x9011;
    public const ushort TimeValue = 0x9201;
    public const ushort ApertureValue = 0x9202;
    public const ushort SubjectDistance = 0x9206;
    public const ushort FocalLength = 0x920A;
    public const ushort SubSeconds = 0x9291;
    public const ushort PixelsWide = 0xA002;
    public const ushort PixelsHigh = 0xA003;
    public const ushort FocalPlaneX = 0xA20E;
    public const ushort FocalPlaneY = 0xA20F;
    public const ushort FocalPlaneUnit = 0xA210;
    public const ushort EquivalentFocalLength = 0xA405;
    public const ushort LensModel = 0xA434;
    public const ushort Make = 0x010F;
    public const ushort Model = 0x0110;
    public const ushort Orientation = 0x0112;
    public const ushort ImageWidth = 0x0100;
    public const ushort ImageHeight = 0x0101;

    private const ushort ExifPointer = 0x8769;
    private const int EntryBytes = 12;

    private readonly SortedDictionary<ushort, (ushort Type, uint Count, byte[] Data)> _fields = [];

    /// <summary>A table photo with all that is needed: f/5.6, 1/125 s, ISO 100, 90 mm at 0.6 m on 36 x 24 mm.</summary>
    public static ExifFields Usual() => new ExifFields()
        .Rational(FNumber, 56, 10).Rational(ExposureTime, 1, 125).Short(Iso, 100).Rational(FocalLength, 90, 1).Rational(SubjectDistance, 600, 1000)
        .Short(PixelsWide, 6000).Short(PixelsHigh, 4000).Rational(FocalPlaneX, 60000, 360).Rational(FocalPlaneY, 60000, 360).Short(FocalPlaneUnit, 4)
        .Text(TakenAt, "2026:11:25 10:15:30").Text(SubSeconds, "25").Text(Offset, "+01:00").Short(Orientation, 1);

    public ExifFields Without(ushort tag)
    {
        _fields.Remove(tag);
        return this;
    }

    public ExifFields Rational(ushort tag, uint over, uint under) => Put(tag, 5, 1, [.. Bytes(over), .. Bytes(under)]);

    public ExifFields Signed(ushort tag, int over, int under) => Put(tag, 10, 1, [.. Bytes((uint)over), .. Bytes((uint)under)]);

    public ExifFields Single(ushort tag, float value) => Put(tag, 11, 1, Bytes(BitConverter.SingleToUInt32Bits(value)));

    public ExifFields Short(ushort tag, ushort value) => Put(tag, 3, 1, [(byte)value, (byte)(value >> 8)]);

    public ExifFields Long(ushort tag, uint value) => Put(tag, 4, 1, Bytes(value));

    public ExifFields Text(ushort tag, string text)
    {
        byte[] data = [.. Encoding.UTF8.GetBytes(text), 0];
        return Put(tag, 2, (uint)data.Length, data);
    }

    /// <summary>The fields as a TIFF block: those below 0x8000 in the first directory, others in the Exif directory.</summary>
    public byte[] Tiff()
    {
        var first = _fields.Where(field => field.Key < 0x8000).ToList();
        var exif = _fields.Where(field => field.Key >= 0x8000).ToList();
        var block = new List<byte> { (byte)'I', (byte)'I', 42, 0, 8, 0, 0, 0 };
        var exifAt = 8 + SizeOf(first.Count + 1) + first.Sum(field => Outside(field.Value.Data));
        Directory(block, [.. first, new(ExifPointer, (4, 1, Bytes((uint)exifAt)))]);
        Directory(block, exif);
        return [.. block];
    }

    /// <summary>The fields within a JPEG of so many pixels.</summary>
    public byte[] Jpeg(int wide = 6000, int high = 4000) => Wrap([.. "Exif\0\0"u8, .. Tiff()], wide, high);

    /// <summary>A JPEG without metadata.</summary>
    public static byte[] Bare(int wide = 6000, int high = 4000) => Wrap(null, wide, high);

    private static byte[] Wrap(byte[]? app1, int wide, int high)
    {
        var file = new List<byte> { 0xFF, 0xD8 };
        if (app1 is not null)
        {
            file.AddRange([0xFF, 0xE1, (byte)((app1.Length + 2) >> 8), (byte)(app1.Length + 2), .. app1]);
        }

        file.AddRange([0xFF, 0xC0, 0, 11, 8, (byte)(high >> 8), (byte)high, (byte)(wide >> 8), (byte)wide, 1, 1, 0x11, 0]);
        file.AddRange([0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0, 0x00, 0xFF, 0xD9]);
        return [.. file];
    }

    private static void Directory(List<byte> block, List<KeyValuePair<ushort, (ushort Type, uint Count, byte[] Data)>> fields)
    {
        var outside = block.Count + SizeOf(fields.Count);
        var data = new List<byte>();
        block.AddRange([(byte)fields.Count, (byte)(fields.Count >> 8)]);
        foreach (var (tag, (type, count, bytes)) in fields)
        {
            block.AddRange([(byte)tag, (byte)(tag >> 8), (byte)type, (byte)(type >> 8), .. Bytes(count)]);
            if (bytes.Length <= 4)
            {
                block.AddRange([.. bytes, .. new byte[4 - bytes.Length]]);
                continue;
            }

            block.AddRange(Bytes((uint)(outside + data.Count)));
            data.AddRange([.. bytes, .. new byte[bytes.Length % 2]]);
        }

        block.AddRange([0, 0, 0, 0, .. data]);
    }

    private static int SizeOf(int entries) => 2 + (entries * EntryBytes) + 4;

    private static int Outside(byte[] data) => data.Length > 4 ? data.Length + (data.Length % 2) : 0;

    private static byte[] Bytes(uint value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(bytes, value);
        return bytes;
    }

    private ExifFields Put(ushort tag, ushort type, uint count, byte[] data)
    {
        _fields[tag] = (type, count, data);
        return this;
    }
}

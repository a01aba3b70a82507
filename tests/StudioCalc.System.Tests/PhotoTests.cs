using System.Globalization;
using System.Text.Json;
using StudioCalc.Client.Embedded;
using StudioCalc.Photos;
using StudioCalc.Tests;

namespace StudioCalc.System.Tests;

/// <summary>Photos read and worked out here, against ExifTool on the same files. Where the two differ, they differ as written
/// here.</summary>
public sealed class PhotoTests
{
    private const double ExifToolDiagonalMm = 43.2666153055679; // of 24 x 36 mm
    private const double ExifToolPi = 3.14159;

    // Aperture, exposure time, ISO, focal length, its equivalent (0: none), distance in mm.
    public static TheoryData<uint, uint, ushort, uint, ushort, uint> Shots => new()
    {
        { 56, 125, 100, 90, 90, 600 },
        { 80, 60, 200, 50, 75, 1200 },
        { 28, 250, 400, 35, 35, 3000 },
        { 110, 8, 100, 60, 120, 400 },
        { 14, 1000, 6400, 85, 85, 2500 },
        { 220, 30, 50, 105, 158, 900 },
    };

    [PeerTheory(Peer.ExifTool)]
    [MemberData(nameof(Shots))]
    public async Task Photo_AgainstExifTool_DiffersOnlyAsIsKnown(uint tenthsOfF, uint under, ushort iso, uint focal, ushort equivalent, uint distanceMm)
    {
        var bytes = new ExifFields().Rational(ExifFields.FNumber, tenthsOfF, 10).Rational(ExifFields.ExposureTime, 1, under).Short(ExifFields.Iso, iso)
            .Rational(ExifFields.FocalLength, focal, 1).Rational(ExifFields.SubjectDistance, distanceMm, 1000)
            .Short(ExifFields.PixelsWide, 6000).Short(ExifFields.PixelsHigh, 4000).Short(ExifFields.EquivalentFocalLength, equivalent).Jpeg();
        var theirs = await ExifTool(bytes);
        var scale = (double)equivalent / focal;
        var blurMm = ExifToolDiagonalMm / (scale * 1440);
        Assert.Equal(blurMm, theirs["CircleOfConfusion"], 1e-9);

        var ours = await Evaluate(bytes, blurMm);
        var fNumber = tenthsOfF / 10.0;
        var exact = ours.DepthOfField!.Aperture.FNumber;

        // They take the f-number and the time as written; here they are marks: f/5.6 is 4√2, 1/60 s is 1/64 s, ISO 6400 is exact.
        var settings = ours.Exposure!.Settings;
        var marks = (2 * Math.Log2(settings.Aperture.FNumber / fNumber)) - Math.Log2(settings.ShutterSpeed.TimeS * under) - Math.Log2(settings.Iso.Speed / iso);
        Assert.Equal(theirs["LightValue"] + marks, settings.ExposureValueIso100Stops, 1e-9);
        Assert.Equal(theirs["LightValue"], settings.ExposureValueIso100Stops, 0.2);

        // Their field of view leaves the extension for close focus out: it is that of focus at infinity. Their pi has five decimals.
        Assert.Equal(theirs["FOV"] * ExifToolPi / Math.PI, ours.FramingAtInfinity!.HorizontalAngleDeg, 1e-9);
        Assert.True(ours.Framing!.HorizontalAngleDeg < theirs["FOV"]);

        // Their hyperfocal distance leaves out one focal length.
        Assert.Equal((theirs["HyperfocalDistance"] * 1000 * fNumber / exact) + focal, ours.DepthOfField.HyperfocalMm, 1e-6 * ours.DepthOfField.HyperfocalMm);

        // Their distance counts from the lens and ours from the sensor. With ours put so that the lens has theirs, and the f-number
        // as written, the depths are the same.
        var sameLens = await Depth(focal, fNumber, blurMm, distanceMm);
        Assert.Equal(theirs["DOF"] * 1000, sameLens, 1e-5 * sameLens);
        Assert.True(ours.DepthOfField.Zone.TotalDepthMm < sameLens * exact / fNumber);
    }

    private static async Task<double> Depth(double focal, double fNumber, double blurMm, double fromLensMm)
    {
        using var client = EmbeddedStudioCalc.Create();
        var answer = await client.DepthOfField.EvaluateDepthOfFieldAsync(new()
        {
            Camera = new() { Lens = new() { FocalLengthMm = focal }, Closeness = new() { Magnification = focal / (fromLensMm - focal) } },
            Aperture = new() { Set = new() { FNumber = fNumber } },
            PermittedBlur = new() { DiameterUm = blurMm * 1000 },
        });
        return answer.Zone.TotalDepthMm;
    }

    private static async Task<PhotoAnswer> Evaluate(byte[] bytes, double blurMm)
    {
        using var client = EmbeddedStudioCalc.Create();
        var photo = new PhotoFile("photo.jpg", () => new MemoryStream(bytes));
        var evaluator = new PhotoEvaluator(client, new() { PermittedBlur = new() { DiameterUm = blurMm * 1000 } });
        await foreach (var answer in evaluator.EvaluateAsync([photo]))
        {
            return answer;
        }

        throw new InvalidOperationException("No answer came.");
    }

    private static async Task<Dictionary<string, double>> ExifTool(byte[] bytes)
    {
        var file = Path.Combine(Path.GetTempPath(), $"studiocalc-{Guid.NewGuid():N}.jpg");
        await File.WriteAllBytesAsync(file, bytes);
        try
        {
            var output = await Tool.RunAsync(Machine.Find("exiftool")!, ["-json", "-n", "-LightValue", "-FOV", "-HyperfocalDistance", "-DOF", "-CircleOfConfusion", file]);
            using var json = JsonDocument.Parse(output);
            return json.RootElement[0].EnumerateObject().Where(value => value.Name != "SourceFile").ToDictionary(
                value => value.Name, value => value.Value.ValueKind == JsonValueKind.Number ? value.Value.GetDouble() : Numbers(value), StringComparer.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    // The sharp zone comes as its near and far limit, an angle with the field after it.
    private static double Numbers(JsonProperty value)
    {
        var numbers = value.Value.GetString()!.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToList();
        return value.Name == "DOF" ? numbers[1] - numbers[0] : numbers[0];
    }
}

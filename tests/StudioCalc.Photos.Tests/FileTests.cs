using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>Files that are broken, wrongly named, or no photos, and the folders that hold them.</summary>
public sealed class FileTests
{
    [Fact]
    public void Read_TiffAndRaw_SaysTheSame()
    {
        var bytes = ExifFields.Usual().Short(ExifFields.ImageWidth, 6000).Short(ExifFields.ImageHeight, 4000).Tiff();
        foreach (var (name, format) in new[] { ("photo.tif", "TIFF"), ("photo.dng", "DNG"), ("PHOTO.NEF", "NEF") })
        {
            var facts = PhotoReader.Read(Sample.Of(bytes, name));
            Assert.Equal((format, 5.6), (facts.Format, facts.FNumber));
            Assert.DoesNotContain(facts.Notes, note => note.Subject == PhotoSubject.File);
        }
    }

    [Fact]
    public void Read_EveryCutOfAPhoto_GivesAnAnswerAndNeverAnException()
    {
        foreach (var (whole, name) in new[] { (ExifFields.Usual().Jpeg(), "photo.jpg"), (ExifFields.Usual().Tiff(), "photo.tif") })
        {
            for (var length = 0; length < whole.Length - 17; length++)
            {
                var facts = PhotoReader.Read(Sample.Of(whole[..length], name));
                Assert.True(facts.Notes.Any(note => note.IsUnread) || facts is { FNumber: 5.6, CapturedAt: not null, SubjectDistanceMm: 600 }, $"{name} cut at {length}");
            }
        }
    }

    [Fact]
    public void Read_EveryWrongByte_GivesAnAnswerAndNeverAnException()
    {
        var random = new Random(1);
        var whole = ExifFields.Usual().Jpeg();
        for (var round = 0; round < 3000; round++)
        {
            var broken = (byte[])whole.Clone();
            for (var count = random.Next(1, 6); count > 0; count--)
            {
                broken[random.Next(broken.Length)] = (byte)random.Next(256);
            }

            var facts = PhotoReader.Read(Sample.Of(broken));
            Assert.True(facts.FNumber is null or >= 0.5 and <= 256);
            Assert.True(facts.ExposureTimeS is null or > 0 and <= 3600);
        }
    }

    [Fact]
    public void Read_CutWithinTheMetadata_IsTruncated()
    {
        var facts = PhotoReader.Read(Sample.Of(ExifFields.Usual().Jpeg()[..200]));
        Assert.Equal("file:truncated", Assert.Single(facts.Notes).Code);
    }

    [Fact]
    public void Read_EmptyFile_IsTruncated() => Assert.Equal("file:truncated", Assert.Single(PhotoReader.Read(Sample.Of([])).Notes).Code);

    [Fact]
    public void Read_TextNamedAsAPhoto_IsOfUnknownFormat() =>
        Assert.Equal("file:unknown-format", Assert.Single(PhotoReader.Read(Sample.Of([.. "This is no photo, but a letter."u8])).Notes).Code);

    [Fact]
    public void Read_PhotoWithoutMetadata_SaysSo()
    {
        var facts = PhotoReader.Read(Sample.Of(ExifFields.Bare()));
        Assert.Equal("file:no-metadata", Assert.Single(facts.Notes).Code);
        Assert.DoesNotContain(facts.Notes, note => note.IsUnread);
    }

    [Fact]
    public void Read_WrongExtension_IsReadAsWhatItHolds()
    {
        var facts = PhotoReader.Read(Sample.Of(ExifFields.Usual().Tiff(), "photo.jpg"));
        Assert.Equal(5.6, facts.FNumber);
        Assert.Contains("file:wrong-extension", facts.Notes.Codes());
    }

    [Fact]
    public void Read_FileThatCannotBeOpened_IsUnreadable()
    {
        var facts = PhotoReader.Read(new("photo.jpg", () => throw new UnauthorizedAccessException("Not yours.")));
        Assert.Equal(("file:unreadable", "Not yours."), (Assert.Single(facts.Notes).Code, facts.Notes[0].Text));
    }

    [Fact]
    public void Read_HugeFile_ReadsItsHeadersOnly()
    {
        var stream = new CountingStream(ExifFields.Usual().Jpeg(), 3L << 30);
        var facts = PhotoReader.Read(new("photo.jpg", () => stream));
        Assert.Equal(5.6, facts.FNumber);
        Assert.True(stream.BytesRead < 1 << 20, $"{stream.BytesRead} bytes were read.");
    }

    [Fact]
    public void Read_MoreMetadataThanIsRead_Stops()
    {
        var stream = new CountingStream([0xFF, 0xD8], 1L << 40, [0xFF, 0xE1, 0xFF, 0xFF, .. new byte[0xFFFD]]);
        var facts = PhotoReader.Read(new("photo.jpg", () => stream));
        Assert.True(stream.BytesRead <= PhotoReader.MostBytes);
        Assert.Equal("file:too-large", Assert.Single(facts.Notes).Code);
    }

    [Theory]
    [InlineData("    :  :     :  :  ", "capture-time:blank")]
    [InlineData("0000:00:00 00:00:00", "capture-time:blank")]
    [InlineData("2026:13:45 10:15:30", "capture-time:malformed")]
    [InlineData("yesterday 9", "capture-time:malformed")]
    public void CaptureTime_ThatIsNone_IsMissingWithItsReason(string text, string code)
    {
        var facts = Sample.Read(ExifFields.Usual().Text(ExifFields.TakenAt, text));
        Assert.Null(facts.CapturedAt);
        Assert.Contains(code, facts.Notes.Codes());
    }

    [Fact]
    public void CaptureTime_WithPartsOfASecondAndOffset_KeepsThem()
    {
        var facts = Sample.Read(ExifFields.Usual());
        Assert.Equal(new DateTime(2026, 11, 25, 10, 15, 30, 250), facts.CapturedAt);
        Assert.Equal(TimeSpan.FromHours(1), facts.TimeOffset);
        Assert.Equal(TimeSpan.FromMinutes(-210), Sample.Read(ExifFields.Usual().Text(ExifFields.Offset, "-03:30")).TimeOffset);
    }

    [Fact]
    public void CaptureTime_FromTheFieldOfTheFile_IsReported()
    {
        var facts = Sample.Read(ExifFields.Usual().Without(ExifFields.TakenAt).Text(ExifFields.DigitizedAt, "2026:11:25 10:00:00"));
        Assert.Equal(new DateTime(2026, 11, 25, 10, 0, 0), facts.CapturedAt);
        Assert.Contains("capture-time:from-other-field", facts.Notes.Codes());
        Assert.Contains("time-offset:missing", facts.Notes.Codes());
    }

    [Fact]
    public void Folder_WithFoldersAndOtherFiles_ListsItsPhotosInOrder()
    {
        using var folder = new TestFolder();
        foreach (var name in new[] { "b.jpg", "a.JPG", "a.nef", "notes.txt", ".hidden.jpg", "inner/c.tif", "a.jpg.xmp" })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(folder.At(name))!);
            File.WriteAllBytes(folder.At(name), ExifFields.Bare());
        }

        var photos = PhotoFolder.Files(folder.Path).ToList();
        Assert.Equal(["a.JPG", "a.nef", "b.jpg", "inner/c.tif"], photos.Select(photo => photo.Name));
        Assert.Equal([true, true, false, false], photos.Select(photo => photo.SharesStem));
    }

    [Fact]
    public void Folder_ThatIsNotThere_IsRefused() => Assert.Throws<FileNotFoundException>(() => PhotoFolder.Files("/no/such/folder"));
}

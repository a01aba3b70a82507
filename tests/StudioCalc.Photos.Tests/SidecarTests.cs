using System.Xml.Linq;
using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>Sidecars: written, merged, or left alone; photos never touched.</summary>
public sealed class SidecarTests
{
    private const string Theirs = """
        <?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/" x:xmptk="Other 1">
         <!-- keep me -->
         <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
          <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:dc="http://purl.org/dc/elements/1.1/" xmp:Rating="4">
           <dc:title><rdf:Alt><rdf:li xml:lang="x-default">Noodles &amp; chilli &#x1F336;</rdf:li></rdf:Alt></dc:title>
          </rdf:Description>
         </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="w"?>
        """;

    private static readonly XNamespace Own = XmpPacket.Namespace;
    private static readonly XNamespace Rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";

    [Fact]
    public async Task Write_WhereThereIsNone_WritesOurValuesAndLeavesThePhoto()
    {
        using var folder = new TestFolder();
        var bytes = ExifFields.Usual().Jpeg();
        var answer = await Sample.Evaluate(folder.Add("photo.jpg", bytes));
        var time = File.GetLastWriteTimeUtc(folder.At("photo.jpg"));
        Assert.Equal(SidecarOutcome.Written, XmpSidecar.Write(answer, SidecarName.FullName).Outcome);
        Assert.Equal(["photo.jpg", "photo.jpg.xmp"], folder.Names);
        Assert.Equal(bytes, File.ReadAllBytes(folder.At("photo.jpg")));
        Assert.Equal(time, File.GetLastWriteTimeUtc(folder.At("photo.jpg")));
        var properties = XDocument.Load(folder.At("photo.jpg.xmp")).Descendants().Where(element => element.Name.Namespace == Own).ToDictionary(element => element.Name.LocalName);
        Assert.Equal(answer.Framing!.Focus.FieldWidthMm, (double)properties["field_width_mm"]);
        Assert.Equal("f/5.6", (string)properties["aperture_mark"]);
        Assert.Equal(answer.Notes.Codes().Distinct(), properties["notes"].Descendants(Rdf + "li").Select(item => item.Value));
        Assert.DoesNotContain("camera", properties.Keys);
    }

    [Fact]
    public async Task Merge_IntoTheirs_KeepsAllOfItsMeaning()
    {
        using var folder = new TestFolder();
        var answer = await Sample.Evaluate(folder.Add("photo.jpg", ExifFields.Usual().Jpeg()));
        File.WriteAllText(folder.At("photo.jpg.xmp"), Theirs);
        Assert.Equal(SidecarOutcome.Merged, XmpSidecar.Write(answer, SidecarName.FullName).Outcome);
        var merged = XDocument.Load(folder.At("photo.jpg.xmp"));
        merged.Descendants(Rdf + "Description").Single(description => description.Elements().Any(element => element.Name.Namespace == Own)).Remove();
        Assert.True(XNode.DeepEquals(XDocument.Parse(Theirs), merged));
    }

    [Fact]
    public async Task Merge_Again_ChangesNothing()
    {
        using var folder = new TestFolder();
        var answer = await Sample.Evaluate(folder.Add("photo.jpg", ExifFields.Usual().Jpeg()));
        foreach (var start in new[] { null, Theirs })
        {
            if (start is not null)
            {
                File.WriteAllText(folder.At("photo.jpg.xmp"), start);
            }

            XmpSidecar.Write(answer, SidecarName.FullName);
            var once = File.ReadAllBytes(folder.At("photo.jpg.xmp"));
            Assert.Equal(SidecarOutcome.Unchanged, XmpSidecar.Write(answer, SidecarName.FullName).Outcome);
            Assert.Equal(once, File.ReadAllBytes(folder.At("photo.jpg.xmp")));
        }
    }

    [Fact]
    public async Task Merge_OverOurOldValues_ReplacesThemWhereverTheyStand()
    {
        var answer = await Sample.Evaluate(ExifFields.Usual());
        var mixed = Theirs.Replace("xmp:Rating=\"4\"", $"xmlns:s=\"{XmpPacket.Namespace}\" s:field_width_mm=\"1\" xmp:Rating=\"4\"", StringComparison.Ordinal)
            .Replace("<dc:title>", "<s:gone_mm>2</s:gone_mm><dc:title>", StringComparison.Ordinal);
        var merged = XDocument.Parse(XmpPacket.Merge(mixed, answer));
        Assert.Single(merged.Descendants(Own + "field_width_mm"));
        Assert.Empty(merged.Descendants(Own + "gone_mm"));
        Assert.DoesNotContain(merged.Descendants().Attributes(), attribute => attribute.Name == Own + "field_width_mm");
        Assert.Single(merged.Descendants().Attributes("{http://ns.adobe.com/xap/1.0/}Rating"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("no xml")]
    [InlineData("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF")]
    [InlineData("<note>mine</note>")]
    [InlineData("<!DOCTYPE a [<!ENTITY b \"c\">]><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">&b;</rdf:RDF>")]
    [InlineData("<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\"><rdf:Description rdf:about=\"a\"/><rdf:Description rdf:about=\"b\"/></rdf:RDF>")]
    public async Task Merge_IntoWhatCannotBeMerged_LeavesItAlone(string text)
    {
        using var folder = new TestFolder();
        var answer = await Sample.Evaluate(folder.Add("photo.jpg", ExifFields.Usual().Jpeg()));
        File.WriteAllText(folder.At("photo.jpg.xmp"), text);
        var result = XmpSidecar.Write(answer, SidecarName.FullName);
        Assert.Equal((SidecarOutcome.Refused, "sidecar:malformed"), (result.Outcome, result.Note!.Code));
        Assert.Equal(text, File.ReadAllText(folder.At("photo.jpg.xmp")));
        Assert.Equal(["photo.jpg", "photo.jpg.xmp"], folder.Names);
    }

    [Fact]
    public async Task Write_OfPhotosThatShareAStem_NeverSharesASidecar()
    {
        using var folder = new TestFolder();
        folder.Add("photo.jpg", ExifFields.Usual().Jpeg());
        folder.Add("photo.nef", ExifFields.Usual().Tiff());
        folder.Add("single.jpg", ExifFields.Usual().Jpeg());
        foreach (var photo in PhotoFolder.Files(folder.Path).ToList())
        {
            var answer = await Sample.Evaluate(photo);
            var stem = XmpSidecar.Write(answer, SidecarName.Stem);
            Assert.Equal(photo.Name == "single.jpg" ? null : "sidecar:shared", stem.Note?.Code);
            Assert.Equal(SidecarOutcome.Written, XmpSidecar.Write(answer, SidecarName.FullName).Outcome);
        }

        Assert.Equal(["photo.jpg", "photo.jpg.xmp", "photo.nef", "photo.nef.xmp", "single.jpg", "single.jpg.xmp", "single.xmp"], folder.Names);
    }

    [Fact]
    public async Task Write_OverALinkOrAReadOnlyFile_LeavesItAlone()
    {
        using var folder = new TestFolder();
        var answer = await Sample.Evaluate(folder.Add("photo.jpg", ExifFields.Usual().Jpeg()));
        File.WriteAllText(folder.At("elsewhere"), Theirs);
        File.CreateSymbolicLink(folder.At("photo.jpg.xmp"), folder.At("elsewhere"));
        Assert.Equal("sidecar:link", XmpSidecar.Write(answer, SidecarName.FullName).Note!.Code);
        Assert.Equal(Theirs, File.ReadAllText(folder.At("elsewhere")));
        File.WriteAllText(folder.At("photo.xmp"), Theirs);
        File.SetAttributes(folder.At("photo.xmp"), FileAttributes.ReadOnly);
        Assert.Equal("sidecar:read-only", XmpSidecar.Write(answer, SidecarName.Stem).Note!.Code);
        File.SetAttributes(folder.At("photo.xmp"), FileAttributes.Normal);
    }

    [Fact]
    public async Task Write_OfAPhotoThatSaysNothing_WritesNothing()
    {
        using var folder = new TestFolder();
        var answer = await Sample.Evaluate(folder.Add("photo.jpg", ExifFields.Bare()));
        Assert.Equal(SidecarOutcome.None, XmpSidecar.Write(answer, SidecarName.FullName).Outcome);
        Assert.Equal(["photo.jpg"], folder.Names);
    }

    [Fact]
    public void WholeFile_ThatIsNotKept_LeavesNothing()
    {
        using var folder = new TestFolder();
        using (var file = new WholeFile(folder.At("photos.csv")))
        {
            file.Text.Write("half");
            file.Text.Flush();
            Assert.Single(folder.Names);
        }

        Assert.Empty(folder.Names);
    }

    [Fact]
    public void WholeFile_WhereOneLiesAlready_DoesNotReplaceItUnasked()
    {
        using var folder = new TestFolder();
        File.WriteAllText(folder.At("photos.csv"), "first");
        using (var file = new WholeFile(folder.At("photos.csv")))
        {
            file.Text.Write("second");
            Assert.Throws<IOException>(() => file.Keep(replace: false));
        }

        Assert.Equal(["photos.csv"], folder.Names);
        Assert.Equal("first", File.ReadAllText(folder.At("photos.csv")));
    }
}

using System.Globalization;
using System.Text;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Microsoft.VisualBasic.FileIO;
using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>CSV and JSON lines, read back by readers that are not ours.</summary>
public sealed class RecordTests
{
    private static readonly PhotoOptions With30 = new() { PermittedBlur = new() { DiameterUm = 30 } };

    [Fact]
    public async Task Csv_ReadBack_HasEveryValueUnderItsName()
    {
        var answers = new[]
        {
            await Sample.Evaluate(ExifFields.Usual(), With30),
            await Sample.Evaluate(Sample.Of(ExifFields.Usual().Text(ExifFields.LensModel, "90 mm, \"macro\""), "in, \"quotes\".jpg"), With30),
            await Sample.Evaluate(Sample.Of([])),
        };
        var rows = Rows(PhotoCsv.Header + string.Concat(answers.Select(PhotoCsv.Line)));
        Assert.Equal(answers.Length, rows.Count);
        foreach (var (row, answer) in rows.Zip(answers))
        {
            foreach (var column in PhotoColumn.All)
            {
                AssertSame(column.Value(answer), row[column.Name]);
            }

            Assert.Equal(answer.Notes.Codes().Distinct(StringComparer.Ordinal), row["notes"].Split(' '));
        }
    }

    [Fact]
    public async Task Csv_OnACommaMachine_HasPointsAndEndsLinesAsTheStandardSays()
    {
        var culture = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new("de-DE");
        try
        {
            var line = PhotoCsv.Line(await Sample.Evaluate(ExifFields.Usual(), With30));
            Assert.Contains(",5.6,0.008,100,90,", line, StringComparison.Ordinal);
            Assert.EndsWith("\r\n", line, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@sum")]
    [InlineData("  =1+1")]
    [InlineData("＝1")]
    public async Task Csv_TextThatASpreadsheetWouldRun_IsMadeHarmless(string text)
    {
        var rows = Rows(PhotoCsv.Header + PhotoCsv.Line(await Sample.Evaluate(Sample.Of(ExifFields.Usual().Text(ExifFields.Model, text.Trim()), text + ".jpg"))));
        Assert.Equal("'" + text.Trim(), rows[0]["camera"]);
        Assert.Equal("'" + text + ".jpg", rows[0]["file"]);
    }

    [Fact]
    public void Csv_Numbers_AreNeverChanged() => Assert.Equal("-1.5,'-1.5,,true\r\n", CsvText.Line([-1.5, "-1.5", null, true]));

    [Fact]
    public async Task JsonLines_ReadBack_HasEveryKnownValueAndNoOther()
    {
        var answer = await Sample.Evaluate(Sample.Of(ExifFields.Usual().Rational(ExifFields.SubjectDistance, uint.MaxValue, 1), "ü\"\\.jpg"), With30);
        var line = PhotoJson.Line(answer);
        Assert.Equal(line.Length - 1, line.IndexOf('\n', StringComparison.Ordinal));
        var read = JsonParser.Default.Parse<Struct>(line);
        foreach (var column in PhotoColumn.All)
        {
            var isThere = read.Fields.TryGetValue(column.Name, out var value);
            Assert.Equal(column.Value(answer) is not null, isThere);
            if (isThere)
            {
                AssertSame(column.Value(answer), value!.KindCase switch
                {
                    Value.KindOneofCase.NumberValue => value.NumberValue.ToString("R", CultureInfo.InvariantCulture),
                    Value.KindOneofCase.BoolValue => value.BoolValue ? "true" : "false",
                    _ => value.StringValue,
                });
            }
        }

        Assert.Equal(answer.Notes.Codes(), read.Fields["notes"].ListValue.Values.Select(note => note.StructValue.Fields["code"].StringValue));
    }

    [Fact]
    public void Columns_WithQuantities_EndInTheirUnit()
    {
        string[] units = ["_mm", "_um", "_s", "_stops", "_deg", "_pixels"];
        string[] none = ["orientation", "f_number", "iso", "magnification"];
        var numbers = PhotoColumn.All.Select(column => column.Name).Except(
            ["file", "format", "camera", "lens", "captured_at", "subject_is_infinite", "sensor_source", "aperture_mark", "shutter_speed_mark", "far_is_infinite", "model_revision"], StringComparer.Ordinal);
        Assert.All(numbers.Except(none, StringComparer.Ordinal), name => Assert.Contains(units, unit => name.EndsWith(unit, StringComparison.Ordinal)));
    }

    private static List<Dictionary<string, string>> Rows(string csv)
    {
        using var parser = new TextFieldParser(new MemoryStream(Encoding.UTF8.GetBytes(csv)), Encoding.UTF8) { HasFieldsEnclosedInQuotes = true, TrimWhiteSpace = false };
        parser.SetDelimiters(",");
        var names = parser.ReadFields()!;
        var rows = new List<Dictionary<string, string>>();
        while (!parser.EndOfData)
        {
            var cells = parser.ReadFields()!;
            Assert.Equal(names.Length, cells.Length);
            rows.Add(names.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal));
        }

        return rows;
    }

    private static void AssertSame(object? expected, string read)
    {
        switch (expected)
        {
            case null:
                Assert.Equal("", read);
                break;
            case double or int:
                Assert.Equal(Convert.ToDouble(expected, CultureInfo.InvariantCulture), double.Parse(read, CultureInfo.InvariantCulture));
                break;
            case bool yes:
                Assert.Equal(yes ? "true" : "false", read);
                break;
            default:
                Assert.Equal(expected, read);
                break;
        }
    }
}

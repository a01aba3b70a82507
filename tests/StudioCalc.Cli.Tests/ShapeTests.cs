using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Cli.Tests;

public sealed class ShapeTests
{
    public static TheoryData<string, IMessage> Short => new()
    {
        { "f/5.6", Aperture.At("f/5.6") },
        { "5.6", Aperture.At("5.6") },
        { "f/5.6 7/10", new Aperture { Mark = "f/5.6", Tenths = 7, Scale = StopScale.Tenth } },
        { "1/125", ShutterSpeed.At("1/125") },
        { "30 s", ShutterSpeed.At("30 s") },
        { "0.5", ShutterSpeed.At("0.5") },
        { "100", Iso.At("100") },
        { "21°", new Iso { LogarithmicSpeedDeg = 21 } },
        { "1/8", FlashPower.At("1/8") },
        { "1/8 +0.3", new FlashPower { Fraction = "1/8", OffsetStops = 0.3 } },
        { "1/8 -0.7", new FlashPower { Fraction = "1/8", OffsetStops = -0.7 } },
    };

    [Theory]
    [MemberData(nameof(Short))]
    public void Shape_InItsShortText_IsReadAndWrittenBack(string text, IMessage expected) => DecimalComma.UnderEach(() =>
    {
        var shape = Shape.Of(expected.Descriptor)!;

        Assert.Equal(expected, shape.Read(text));
        Assert.Equal(text, shape.Exact(expected));
    });

    [Theory]
    [InlineData("ISO 100", "100")]
    [InlineData("iso 100", "100")]
    [InlineData("ISO 100/21°", "100")]
    [InlineData("800/30°", "800")]
    [InlineData("ISO1600", "1600")]
    public void Iso_WithItsNameOrDegrees_IsTheMark(string text, string mark) => Assert.Equal(Iso.At(mark), IsoShape.Read(text));

    [Theory]
    [InlineData("1/8 + 0.3")]
    [InlineData("1/8 +0.3 stops")]
    [InlineData("1/8+3/10")]
    public void FlashPower_WithStopsAdded_IsReadHoweverItIsSpaced(string text) =>
        Assert.Equal(new FlashPower { Fraction = "1/8", OffsetStops = 0.3 }, FlashPowerShape.Read(text));

    public static TheoryData<string, Duration> Times => new()
    {
        { "2 min 30 s", new() { Seconds = 150 } },
        { "1 h 20 min", new() { Seconds = 4800 } },
        { "1 min 30 s", new() { Seconds = 90 } },
        { "0 s", new() },
        { "-1.5 s", new() { Seconds = -1, Nanos = -500_000_000 } },
        { "12345.000000001 s", new() { Seconds = 12345, Nanos = 1 } },
    };

    [Theory]
    [MemberData(nameof(Times))]
    public void Time_InItsShortText_IsReadAndWrittenBack(string text, Duration expected) => DecimalComma.UnderEach(() =>
    {
        Assert.Equal(expected, TimeShape.Read(text));
        Assert.Equal(text, TimeShape.Write(expected));
    });

    [Fact]
    public void Moment_WithItsDistanceFromGreenwich_IsReadAndWrittenBack()
    {
        var moment = DateShape.Read("2026-05-04T09:00+02:00");

        Assert.Equal(Timestamp.FromDateTime(new DateTime(2026, 5, 4, 7, 0, 0, DateTimeKind.Utc)), moment);
        Assert.Equal(moment, DateShape.Read(DateShape.Write(moment)));
        Assert.Throws<FormatException>(() => DateShape.Read("2026-05-04T09:00"));
    }

    [Theory]
    [InlineData("--aperture", "f/5,6", "has a comma; write it with a point, such as 5.6.")]
    [InlineData("--shutter-speed", "0,5", "has a comma; write it with a point")]
    [InlineData("--iso", "1,600", "has a comma; write it with a point")]
    [InlineData("--iso", "ISO 100/24°", "ISO 100 is 21°, not 24°; write one of the two alone.")]
    [InlineData("--iso", "auto", "write it as 100, \"ISO 100\" or 21°.")]
    [InlineData("--iso", "", "write it as 100")]
    public void Setting_ThatCannotBeRead_IsRefusedWithTheFix(string option, string text, string expected) => DecimalComma.UnderEach(() =>
    {
        var (name, said) = Assert.Single(Tool.Read(Tool.Call("ConvertMark"), [option, text]).Refusals);

        Assert.Equal(option, name);
        Assert.Contains(expected, said, StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("half")]
    [InlineData("1/8 +0,3")]
    [InlineData("1/8 0.3")]
    public void FlashPower_ThatCannotBeRead_IsRefused(string text) => Assert.Throws<FormatException>(() => FlashPowerShape.Read(text));
}

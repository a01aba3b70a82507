using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class ConvertMarkTests
{
    [Fact]
    public void Aperture_IsToldOnEveryScaleInOrder()
    {
        var answer = Calls.Exposure.ConvertMark(new() { Aperture = new() { Mark = "f/13", Scale = StopScale.Half } });
        Assert.Equal([StopScale.Whole, StopScale.Half, StopScale.Third, StopScale.Tenth], answer.Apertures.Select(one => one.Scale));
        Assert.Equal(["f/16", "f/13", "f/14", "f/11"], answer.Apertures.Select(one => one.Mark));
        Assert.Equal((5u, 7.5), (answer.Apertures[3].Tenths, Math.Round(answer.AdditiveValueStops, 9)));
        Assert.Empty(answer.Advisories);
    }

    [Fact]
    public void ShutterSpeedAndIso_AreToldOnTheScalesTheyHave()
    {
        var speed = Calls.Exposure.ConvertMark(new() { ShutterSpeed = new() { Mark = "1/60" } });
        Assert.Equal((3, 0, 6.0), (speed.ShutterSpeeds.Count, speed.Isos.Count, speed.AdditiveValueStops));
        var iso = Calls.Exposure.ConvertMark(new() { Iso = new() { Mark = "100" } });
        Assert.Equal((3, 0, 5.0), (iso.Isos.Count, iso.Apertures.Count, iso.AdditiveValueStops));
    }

    [Theory]
    [InlineData("""{"aperture":{"fNumber":1}}""")]
    [InlineData("""{"shutterSpeed":{"timeS":1}}""")]
    [InlineData("""{"apertureValueStops":0}""")]
    [InlineData("""{"timeValueStops":0}""")]
    public void ValueOfNought_IsNoughtWithoutASign(string json)
    {
        var answer = Calls.Exposure.ConvertMark(Calls.Parse<ConvertMarkRequest>(json));
        Assert.Equal(0, answer.AdditiveValueStops);
        Assert.False(double.IsNegative(answer.AdditiveValueStops));
    }

    [Fact]
    public void AmbiguousMarkWithoutAScale_IsToldOf() => Assert.Equal(
        AdvisoryCode.AmbiguousMark,
        Assert.Single(Calls.Exposure.ConvertMark(new() { Aperture = new() { Mark = "f/13" } }).Advisories).Code);

    [Fact]
    public void UnknownMark_IsRefusedByPath() => Assert.Equal(
        [("aperture.mark", "UNKNOWN_MARK")],
        Calls.Refused(() => Calls.Exposure.ConvertMark(new() { Aperture = new() { Mark = "f/6" } })));
}

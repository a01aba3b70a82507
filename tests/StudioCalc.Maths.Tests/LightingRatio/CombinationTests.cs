using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class CombinationTests
{
    private static readonly Gen<MeteredLight[]> AnyLights = Gen.OneOf(
        Gen.Double[0, 18].Select(level => new MeteredLight(new LightLevel(level))),
        Gen.Double[0, 12].Select(level => new MeteredLight(new FlashLevel(level)))).Array[1, 32];

    private static readonly CameraSettings Setting = new(4, 1 / 64.0, 100);
    private static NoTrail none;

    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(3, 1.5849625007211562)]
    [InlineData(4, 2)]
    public void Of_EqualFlashes_AddTheirNumberAsLight(int count, double stops)
    {
        var lights = Enumerable.Repeat(new MeteredLight(new FlashLevel(4)), count).ToArray();
        var all = Combination.Of(lights, Setting, 0, ref none);
        Assert.Equal(stops, all.TotalOverSettingStops, 1e-12);
        Assert.Equal(4 * Math.Sqrt(count), all.FNumber, 1e-12);
        Assert.Equal(1, all.FlashShare, 1e-12);
    }

    [Fact]
    public void Of_AnyLights_SharesSumToOneAndLightAdds() => AnyLights.Sample(lights =>
    {
        var all = Combination.Of(lights, Setting, 0.5, ref none);
        Assert.Equal(1, all.Parts.Sum(part => part.Share), 1e-9);
        Assert.Equal(all.FlashShare, all.Parts.Where((_, i) => lights[i].IsFlash).Sum(part => part.Share), 1e-9);
        Assert.Equal(Math.Pow(2, all.TotalOverSettingStops), all.Parts.Sum(part => Math.Pow(2, part.OverSettingStops)), 1e-6 * Math.Pow(2, all.TotalOverSettingStops));
        Assert.True(all.TotalOverSettingStops >= all.Parts.Max(part => part.OverSettingStops) - 1e-9);
    });

    [Fact]
    public void Of_LightsInAnotherOrder_ComeToTheSame() => AnyLights.Sample(lights =>
    {
        var all = Combination.Of(lights, Setting, 0, ref none);
        var turned = Combination.Of(lights.Reverse().ToArray(), Setting, 0, ref none);
        Assert.Equal(all.TotalOverSettingStops, turned.TotalOverSettingStops, 1e-9);
        Assert.Equal(all.FlashShare, turned.FlashShare, 1e-9);
    });

    [Fact]
    public void Of_TheApertureAskedFor_IsRightWhenSet() => Gen.Select(AnyLights, Gen.Double[0, 5]).Sample((lights, loss) =>
    {
        var asked = Combination.Of(lights, Setting, loss, ref none).FNumber;
        Assert.Equal(0, Combination.Of(lights, new(asked, Setting.ShutterSpeedS, Setting.Iso), loss, ref none).TotalOverSettingStops, 1e-9);
    });

    [Fact]
    public void Of_TwiceTheTime_LeavesFlashAsItIs() => AnyLights.Sample(lights =>
    {
        var (once, twice) = (Combination.Of(lights, Setting, 0, ref none), Combination.Of(lights, new(4, 1 / 32.0, 100), 0, ref none));
        for (var i = 0; i < lights.Length; i++)
        {
            Assert.Equal(lights[i].IsFlash ? 0 : 1, twice.Parts[i].OverSettingStops - once.Parts[i].OverSettingStops, 1e-9);
        }
    });

    [Fact]
    public void Sum_OfFlashes_IsWhatTheyComeToTogether() => Gen.Double[0, 12].Array[1, 8].Sample(levels =>
    {
        var flashes = Array.ConvertAll(levels, level => new FlashLevel(level));
        var sum = FlashSum.Of(flashes, ref none);
        var all = Combination.Of(Array.ConvertAll(flashes, flash => new MeteredLight(flash)), Setting, 0, ref none);
        Assert.Equal(all.FNumber, sum.FNumberAt(100), 1e-9 * all.FNumber);
    });

    [Fact]
    public void Of_NoLight_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Combination.Of(ReadOnlySpan<MeteredLight>.Empty, Setting, 0, ref none));
}

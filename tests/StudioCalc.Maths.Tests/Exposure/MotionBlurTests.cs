using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class MotionBlurTests
{
    private static NoTrail none;

    [Fact]
    public void LongestExposure_ItsOwnBlur_IsThePermittedOne() =>
        Gen.Select(Gen.Double[0.1, 1000], Gen.Double[0.001, 20], Gen.Double[0.00001, 100], Gen.Double[0, 89]).Sample((blur, m, speed, angle) =>
        {
            var across = MotionBlur.AcrossMPerS(speed, angle, ref none);
            var time = MotionBlur.LongestExposureS(blur, m, across, ref none)!.Value;
            Assert.Equal(blur, MotionBlur.BlurUm(time, m, across, ref none), 1e-9 * blur);
        });

    [Theory]
    [InlineData(0, 1)]
    [InlineData(60, 0.5)]
    [InlineData(90, 0)]
    public void Across_AtAnAngle_IsItsShare(double angle, double share) =>
        Assert.Equal(2 * share, MotionBlur.AcrossMPerS(2, angle, ref none), 1e-12);

    [Fact]
    public void LongestExposure_NothingMovesAcross_IsNone() =>
        Assert.Null(MotionBlur.LongestExposureS(10, 0.5, MotionBlur.AcrossMPerS(1, 90, ref none), ref none));

    [Fact]
    public void LongestExposure_TwiceTheSpeed_IsHalf() => Gen.Double[0.001, 10].Sample(across => Assert.Equal(
        MotionBlur.LongestExposureS(10, 0.5, across, ref none)!.Value / 2, MotionBlur.LongestExposureS(10, 0.5, 2 * across, ref none)!.Value, 1e-9));
}

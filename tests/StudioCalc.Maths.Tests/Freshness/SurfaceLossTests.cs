using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class SurfaceLossTests
{
    [Fact]
    public void FormWithoutTheLogarithm_IsLowNearServingTemperature()
    {
        // Computed once from the two forms: 1.133 at 70 °C in 22 °C and half humidity.
        var loss = new SurfaceLoss(new(22, 0.5), 22, 8, 1);
        Assert.Equal(1.133, loss.VapourAt(70) / loss.LowRateVapourAt(70), 1e-3);
    }

    [Fact]
    public void WetSurface_SettlesBelowTheAir_AndAboveTheDewPoint() => Gen.Select(Gen.Double[5, 40], Gen.Double[0.1, 0.95], Gen.Double[3, 50]).Sample(
        (celsius, humidity, convection) =>
        {
            var air = new HumidAir(celsius, humidity);
            var settles = new SurfaceLoss(air, celsius, convection, 1).SettlesAtCelsius;
            Assert.InRange(settles, air.DewPointCelsius, celsius);
            Assert.Equal(0, new SurfaceLoss(air, celsius, convection, 1).At(settles), 1e-6);
        });

    [Fact]
    public void DrySurface_SettlesAtTheAir() => Assert.Equal(22, new SurfaceLoss(new(22, 0.5), 22, 8).SettlesAtCelsius, 1e-9);

    // Cengel, Heat and Mass Transfer, example 9-2, second-hand: a plate 0.6 m square at 90 °C in 30 °C.
    [Theory]
    [InlineData(FlowForm.Upright, 5.3, 0.06)]
    [InlineData(FlowForm.FaceUp, 5.94, 0.06)]
    [InlineData(FlowForm.FaceDown, 2.97, 0.03)]
    public void StillAir_IsThatOfTheWorkedExample(FlowForm form, double coefficient, double tolerance) =>
        Assert.Equal(coefficient, AirFlow.Coefficient(form, 600, 90, 30, 0), tolerance);

    [Fact]
    public void MovingAir_TakesMoreThanStill() => Gen.Select(Gen.Double[10, 300], Gen.Double[25, 90], Gen.Double[0.05, 5]).Sample(
        (size, celsius, speed) =>
        {
            foreach (var form in Enum.GetValues<FlowForm>())
            {
                Assert.True(AirFlow.Coefficient(form, size, celsius, 22, speed) > AirFlow.Coefficient(form, size, celsius, 22, 0));
            }
        });
}

namespace StudioCalc.Maths.Tests;

public sealed class HumidAirTests
{
    // Saturation over water by WMO-No. 8, Annex 4.B, seen in a weather-station manual.
    [Theory]
    [InlineData(10, 12.26)]
    [InlineData(20, 23.326)]
    [InlineData(25, 31.601)]
    [InlineData(60, 199.933)]
    public void Saturation_IsThatOfTheGuide(double celsius, double hpa) => Assert.Equal(hpa, HumidAir.SaturationHpa(celsius), 2e-3);

    [Fact]
    public void WetBulb_IsCloseToStullsFit()
    {
        // R. Stull, Journal of Applied Meteorology and Climatology 50 (2011), equation 1: within -1 to 0.65 K of measurements; psychrometer and fit differ by as much.
        for (var t = 5.0; t <= 40; t += 5)
        {
            for (var humidity = 20.0; humidity <= 90; humidity += 10)
            {
                var stull = t * Math.Atan(0.151977 * Math.Sqrt(humidity + 8.313659)) + Math.Atan(t + humidity) - Math.Atan(humidity - 1.676331)
                    + 0.00391838 * Math.Pow(humidity, 1.5) * Math.Atan(0.023101 * humidity) - 4.686035;
                Assert.InRange(new HumidAir(t, humidity / 100).WetBulbCelsius - stull, -0.7, 1);
            }
        }
    }

    [Fact]
    public void SaturatedAir_HasItsTemperatureAsDewPointAndWetBulb()
    {
        var air = new HumidAir(22, 1);
        Assert.Equal(22, air.DewPointCelsius, 1e-9);
        Assert.Equal(22, air.WetBulbCelsius, 1e-6);
    }

    [Fact]
    public void DryAir_HasNoDewPoint() => Assert.Equal(double.NegativeInfinity, new HumidAir(22, 0).DewPointCelsius);
}

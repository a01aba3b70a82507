using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes percentiles of simulated values. A hundred values and more always have intervals.</summary>
internal static class QuantileWriter
{
    public static TimeQuantiles ToTimes(this Percentiles ms, double meanMs) => new()
    {
        P10 = Time(ms.P10),
        P50 = Time(ms.P50),
        P90 = Time(ms.P90),
        Mean = (meanMs / 1000).ToDuration(),
    };

    public static NumberQuantiles ToNumbers(this Percentiles thousandths) => new()
    {
        P10 = Number(thousandths.P10),
        P50 = Number(thousandths.P50),
        P90 = Number(thousandths.P90),
    };

    private static TimeQuantile Time(QuantileValue ms) => new()
    {
        Value = (ms.Value / 1000.0).ToDuration(),
        Low = (ms.Lower!.Value / 1000.0).ToDuration(),
        High = (ms.Upper!.Value / 1000.0).ToDuration(),
    };

    private static NumberQuantile Number(QuantileValue thousandths) => new()
    {
        Value = thousandths.Value / 1000.0,
        Low = thousandths.Lower!.Value / 1000.0,
        High = thousandths.Upper!.Value / 1000.0,
    };
}

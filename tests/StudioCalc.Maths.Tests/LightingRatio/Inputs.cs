using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Inputs of the balance calculation.</summary>
internal static class Inputs
{
    /// <summary>A window of f/8 at 1/125 and a flash of f/5.6 at an eighth of its power, both at ISO 100.</summary>
    public static BalanceInput Example { get; } = new()
    {
        Back = new(13),
        Fill = new(5),
        BackOverFillStops = 2,
        Placed = PlacedLight.Fill,
        PlacedOverSettingStops = -1,
        ShutterSpeedS = 1 / 128.0,
        Iso = 100,
        PowerBelowFullStops = 3,
        LowestPowerBelowFullStops = 7,
        SyncSpeedS = Marks.ShutterSpeed.Find("1/200", StopScale.Third)!.Value,
        WidestFNumber = Math.Pow(2, 1.5),
        SmallestFNumber = 22,
    };

    /// <summary>Inputs within reach and beyond it, with limits on marks and between them.</summary>
    public static Gen<BalanceInput> Any { get; } =
        from back in Gen.Double[2, 18]
        from fill in Gen.Double[0, 12]
        from asked in Gen.OneOf<double>(Gen.Double[-5, 5], Gen.Int[-5, 5].Select(k => (double)k))
        from placed in Gen.OneOf(PlacedLight.Back, PlacedLight.Fill)
        from over in Gen.Double[-3, 3]
        from held in Time
        from sync in Time
        from slowest in Gen.OneOf<double>(Gen.Const(double.PositiveInfinity), Time)
        from loss in Gen.Double[0, 5]
        from scale in Gen.OneOf(Enum.GetValues<StopScale>())
        from powerScale in Gen.OneOf(Enum.GetValues<StopScale>())
        from power in Gen.OneOf<double>(Gen.Double[0, 7], Gen.Int[0, 7].Select(stops => (double)stops))
        from lowest in Gen.Double[0, 3]
        from widest in Gen.Double[0, 4]
        from range in Gen.Double[0, 8]
        select Example with
        {
            Back = new(back),
            Fill = new(fill),
            BackOverFillStops = asked,
            Placed = placed,
            PlacedOverSettingStops = over,
            ShutterSpeedS = held,
            LensLossStops = loss,
            Scale = scale,
            PowerScale = powerScale,
            PowerBelowFullStops = power,
            LowestPowerBelowFullStops = power + lowest,
            SyncSpeedS = Math.Min(sync, slowest),
            SlowestShutterSpeedS = Math.Max(sync, slowest),
            WidestFNumber = Math.Pow(2, widest / 2),
            SmallestFNumber = Math.Pow(2, (widest + range) / 2),
        };

    private static Gen<double> Time => Gen.OneOf<double>(
        Gen.Double[-11, 3].Select(log => Math.Pow(2, log)), Gen.Int[-33, 9].Select(thirds => Math.Pow(2, thirds / 3.0)));

    public static Gen<BalanceVariable> AnyVariable { get; } = Gen.OneOf(Enum.GetValues<BalanceVariable>());
}

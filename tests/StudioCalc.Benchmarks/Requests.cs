using StudioCalc.V1;

namespace StudioCalc.Benchmarks;

/// <summary>The requests that are measured, as the samples of the documentation have them.</summary>
internal static class Requests
{
    public static EvaluateExposureRequest Exposure(bool working = false) => new()
    {
        Settings = Camera("f/5.6"),
        Light = new() { Continuous = new() { Settings = Camera("f/8") } },
        Scale = StopScale.Third,
        IncludeWorking = working,
    };

    public static BalanceFillRequest Balance(bool working = false) => new()
    {
        BackLight = new() { Continuous = new() { Settings = Camera("f/8") } },
        Fill = new()
        {
            Reading = new() { Flash = new() { Settings = new() { Aperture = new() { Mark = "f/5.6" }, Iso = new() { Mark = "100" } } } },
            Power = new() { Fraction = "1/8" },
            PowerScale = StopScale.Tenth,
        },
        BackOverFillStops = 2,
        Placement = new() { Light = PlacedLight.Fill, OverSettingStops = -1 },
        Camera = new() { Scale = StopScale.Third, SyncSpeed = new() { Mark = "1/200" } },
        IncludeWorking = working,
    };

    private static CameraSettings Camera(string aperture) => new()
    {
        Aperture = new() { Mark = aperture },
        ShutterSpeed = new() { Mark = "1/125" },
        Iso = new() { Mark = "100" },
    };
}

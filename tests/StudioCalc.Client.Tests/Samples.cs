using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Client.Tests;

/// <summary>Requests that several tests send.</summary>
internal static class Samples
{
    public static EvaluateExposureRequest Exposure() => new() { Settings = CameraSettings.Of("f/8", "1/125", "100") };

    /// <summary>Three fields are refused.</summary>
    public static EvaluateExposureRequest BadExposure() => new()
    {
        Settings = new() { Aperture = Aperture.At("f/8"), ShutterSpeed = new() { TimeS = 1e9 } },
        ReflectedConstant = 1,
    };

    /// <summary>The example of the documentation for the request.</summary>
    public static TRequest Read<TRequest>(string file)
        where TRequest : Google.Protobuf.IMessage, new()
    {
        var request = new TRequest();
        var violations = new Violations();
        ContractJson.Read(request, File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "examples", file)), violations);
        Assert.Empty(violations.List);
        return request;
    }
}

using Google.Protobuf;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Host.Tests;

/// <summary>The sample requests of the documentation.</summary>
internal static class Requests
{
    public static EvaluateExposureRequest Exposure(Action<EvaluateExposureRequest>? change = null) => Read("evaluate-exposure.json", change);

    public static BalanceFillRequest Balance(Action<BalanceFillRequest>? change = null) => Read("balance-fill.json", change);

    public static string Text(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "examples", name));

    private static T Read<T>(string name, Action<T>? change)
        where T : IMessage, new()
    {
        var violations = new Violations();
        var request = new T();
        ContractJson.Read(request, System.Text.Encoding.UTF8.GetBytes(Text(name)), violations);
        Xunit.Assert.Empty(violations.List);
        change?.Invoke(request);
        return request;
    }
}

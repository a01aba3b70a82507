using System.Globalization;
using Google.Protobuf;

namespace StudioCalc.Services.Tests;

/// <summary>A call changes nothing, and its answer depends on the request alone.</summary>
public sealed class PurityTests
{
    public static TheoryData<string> CallNames => WorkingTests.CallNames;

    [Theory]
    [MemberData(nameof(CallNames))]
    public void Call_AnyRequest_LeavesTheRequestAsItWas(string call)
    {
        var method = Calls.Method(call);
        RandomRequests.Sample(method, 200, (request, _) =>
        {
            var before = request.Descriptor.Parser.ParseFrom(request.ToByteArray());
            _ = Calls.CallAsync(method, request).GetAwaiter().GetResult();
            Assert.Equal(before, request);
        });
    }

    [Theory]
    [MemberData(nameof(CallNames))]
    public void Call_Repeated_GivesANewAndEqualAnswer(string call)
    {
        var method = Calls.Method(call);
        RandomRequests.Sample(method, 200, (request, first) =>
        {
            var second = Calls.CallAsync(method, request).GetAwaiter().GetResult();
            Assert.NotSame(first, second);
            Assert.Equal(first, second);
        });
    }

    [Fact]
    public void Call_UnderACultureWithDecimalCommas_GivesTheSameAnswer()
    {
        var (exposure, balance) = (Calls.Exposure.EvaluateExposure(Examples.Exposure()), Calls.LightingRatio.BalanceFill(Examples.Balance()));
        var refused = Assert.ThrowsAny<Grpc.Core.RpcException>(() => Calls.Exposure.EvaluateExposure(Spoilt()));
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("0,5", 0.5.ToString(CultureInfo.CurrentCulture));
            Assert.Equal(exposure, Calls.Exposure.EvaluateExposure(Examples.Exposure()));
            Assert.Equal(balance, Calls.LightingRatio.BalanceFill(Examples.Balance()));
            var again = Assert.ThrowsAny<Grpc.Core.RpcException>(() => Calls.Exposure.EvaluateExposure(Spoilt()));
            Assert.Equal(Calls.StatusOf(refused), Calls.StatusOf(again));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }

        static V1.EvaluateExposureRequest Spoilt()
        {
            var request = Examples.Exposure();
            request.Settings.Aperture.Mark = "5.7";
            return request;
        }
    }
}

using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class FieldPathTests
{
    private static readonly FieldPath Root = FieldPath.Root(BalanceFillRequest.Descriptor);

    [Fact]
    public void Path_OfNestedFieldNumbers_IsTheProtoPath()
    {
        var path = Root[BalanceFillRequest.BackLightFieldNumber][Reading.ContinuousFieldNumber][ContinuousReading.SettingsFieldNumber];
        Assert.Equal("back_light.continuous.settings", path.ToString());
        Assert.Equal("preference[1]", Root[BalanceFillRequest.PreferenceFieldNumber].ItemAt(1));
        Assert.Equal("", Root.ToString());
    }

    [Fact]
    public void Path_AskedTwice_IsMadeOnce() => Assert.Same(Root[BalanceFillRequest.FillFieldNumber], Root[BalanceFillRequest.FillFieldNumber]);
}

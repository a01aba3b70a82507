using StudioCalc.V1;
namespace StudioCalc.Services.Tests;
public sealed class ZzDump(Xunit.Abstractions.ITestOutputHelper o)
{
    [Fact]
    public void Dump()
    {
        var a = Examples.SolveAperture(); 
        o.WriteLine(Calls.DepthOfField.SolveAperture(a).ToString());
        var b = Examples.PlaceFocus();
        o.WriteLine(Calls.DepthOfField.PlaceFocus(b).ToString());
        Assert.NotNull(a);
    }
}

using System.Globalization;
using System.Runtime.CompilerServices;

namespace StudioCalc.Client.Tests;

/// <summary>All tests here run under a culture that writes numbers with a comma.</summary>
public class DecimalComma
{
    [ModuleInitializer]
    internal static void Set() =>
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.GetCultureInfo("de-DE");

    [Fact]
    public async Task Culture_OnAnyThread_WritesAComma() =>
        Assert.Equal("1,5 1,5", $"{1.5} {await Task.Run(() => $"{1.5}")}");
}

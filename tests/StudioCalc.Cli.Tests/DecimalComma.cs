using System.Globalization;
using System.Runtime.CompilerServices;

namespace StudioCalc.Cli.Tests;

/// <summary>All tests here run under a culture that writes numbers with a comma.</summary>
public class DecimalComma
{
    /// <summary>Cultures with a decimal comma, one of them with its own minus sign.</summary>
    public static readonly string[] Cultures = ["de-DE", "nb-NO"];

    [ModuleInitializer]
    internal static void Set() =>
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.GetCultureInfo(Cultures[0]);

    /// <summary>Does a thing under each of the cultures.</summary>
    internal static void UnderEach(Action action)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            foreach (var culture in Cultures)
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                action();
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public async Task Culture_OnAnyThread_WritesAComma() =>
        Assert.Equal("1,5 1,5", $"{1.5} {await Task.Run(() => $"{1.5}")}");
}

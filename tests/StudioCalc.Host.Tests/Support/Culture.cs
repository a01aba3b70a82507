using System.Globalization;
using System.Runtime.CompilerServices;

namespace StudioCalc.Host.Tests;

/// <summary>Every test here runs under a culture that writes 5,6 for five point six.</summary>
internal static class Culture
{
    [ModuleInitializer]
    internal static void Set() =>
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
}

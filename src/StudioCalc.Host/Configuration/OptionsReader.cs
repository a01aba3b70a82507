using System.Reflection;

namespace StudioCalc.Host;

/// <summary>Reads the settings, and refuses names that are not settings.</summary>
internal static class OptionsReader
{
    private const string Section = "StudioCalc";

    public static StudioCalcOptions Read(IConfiguration configuration)
    {
        var section = configuration.GetSection(Section);
        RefuseUnknown(section, typeof(StudioCalcOptions));
        StudioCalcOptions options;
        try
        {
            options = section.Get<StudioCalcOptions>() ?? new();
        }
        catch (InvalidOperationException error)
        {
            throw new ConfigurationException(error.Message);
        }

        OptionsCheck.Check(options);
        return options;
    }

    private static void RefuseUnknown(IConfigurationSection section, Type type)
    {
        var properties = type.GetProperties(BindingFlags.Public | BindingFlags.Instance);
        foreach (var child in section.GetChildren())
        {
            var property = properties.FirstOrDefault(candidate => candidate.Name.Equals(child.Key, StringComparison.OrdinalIgnoreCase))
                ?? throw new ConfigurationException(
                    $"{child.Path} is not a setting; {section.Path} has {string.Join(", ", properties.Select(known => known.Name))}.");
            if (property.PropertyType.DeclaringType == typeof(StudioCalcOptions))
            {
                RefuseUnknown(child, property.PropertyType);
            }
        }
    }
}

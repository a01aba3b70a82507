namespace StudioCalc.Cli;

/// <summary>In which units tables show lengths and temperatures.</summary>
internal enum UnitSystem
{
    /// <summary>Millimetres, and metres from 1 m up; degrees Celsius.</summary>
    Metric,

    /// <summary>Feet and inches from 300 mm up, millimetres below; degrees Fahrenheit.</summary>
    Imperial,
}

using UnitsNet;

namespace StudioCalc.Cli;

/// <summary>A unit that people may write.</summary>
/// <param name="Known">The same unit, or the one that it is counted in, to the units library; null where that has none.</param>
/// <param name="Factor">How many of the known unit it is; without one, how many of the contract's unit.</param>
/// <param name="Spellings">How it is written, the usual way first.</param>
internal sealed record Unit(Enum? Known, double Factor, params string[] Spellings)
{
    public string Spelling => Spellings[0];

    /// <summary>A value in this unit as one in <paramref name="target"/>, a unit of the same kind.</summary>
    public double To(Unit target, double value) => ReferenceEquals(this, target) ? value
        : Known is { } from && target.Known is { } to
        ? UnitConverter.Convert(value * Factor, from, to) / target.Factor
        : value * Factor / target.Factor;

    /// <summary>A value as people write it: <c>1 stop</c>, <c>2 stops</c>.</summary>
    public string Write(string number) => this == QuantityKind.Stop && number is "1" or "-1" or "+1" ? $"{number} stop" : $"{number} {Spelling}";
}

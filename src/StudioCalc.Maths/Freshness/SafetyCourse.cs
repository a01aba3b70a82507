using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Temperatures of food over time, as straight runs one after the other.</summary>
internal sealed class SafetyCourse
{
    private readonly List<(double StartS, SafetySpell Spell)> _runs = [];

    public SafetyCourse(IReadOnlyList<SafetySpell> spells)
    {
        foreach (var spell in spells)
        {
            _runs.Add((EndS, spell));
            EndS += spell.DurationS;
        }

        WarmestCelsius = spells.Max(spell => Max(spell.StartCelsius, spell.EndCelsius));
        LastCelsius = spells[^1].EndCelsius;
    }

    public double EndS { get; }

    public double WarmestCelsius { get; }

    public double LastCelsius { get; }

    /// <summary>The periods strictly between two temperatures, in order. A touch of an end does not part a period.</summary>
    public List<(double FromS, double ToS)> Periods(double aboveCelsius, double belowCelsius)
    {
        var periods = new List<(double FromS, double ToS)>();
        foreach (var (start, spell) in _runs)
        {
            if (spell.Between(aboveCelsius, belowCelsius) is not var (from, to))
            {
                continue;
            }

            if (periods.Count > 0 && periods[^1].ToS >= start + from)
            {
                periods[^1] = (periods[^1].FromS, start + to);
            }
            else
            {
                periods.Add((start + from, start + to));
            }
        }

        return periods;
    }

    /// <summary>When the food is first below a temperature; null if it never is. [s]</summary>
    public double? FirstBelow(double celsius) =>
        Periods(double.NegativeInfinity, celsius) is [var (from, _), ..] ? from : null;

    /// <summary>When the food is first at a temperature or below, not before a time; null if it never is. [s]</summary>
    public double? FirstDownTo(double celsius, double notBeforeS)
    {
        foreach (var (from, to) in Periods(celsius, double.PositiveInfinity))
        {
            if (from <= notBeforeS && notBeforeS < to)
            {
                return to < EndS || LastCelsius <= celsius ? to : null;
            }
        }

        return notBeforeS;
    }
}

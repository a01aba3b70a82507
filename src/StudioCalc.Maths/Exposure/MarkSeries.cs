using System.Collections.Frozen;
using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The marks of one setting on every scale, and the exact values behind them.</summary>
/// <remarks>
/// <para>Every mark stands for the member of a geometric series at its position p, in stops from the base:</para>
/// <code>
/// value = base * 2^(p * exponent)      (1)
/// </code>
/// <para>Aperture: base 1, exponent 1/2. Shutter speed: base 1 s, exponent 1. ISO: base 100, exponent 1.
/// A text names a position only together with its scale: f/13 is 12.70 in thirds and 13.45 in halves.</para>
/// <para>Source: docs/models/exposure.md, section Marks.</para>
/// </remarks>
public sealed class MarkSeries
{
    // Rounding error of a logarithm, so that an exact tie is seen as one.
    private const double Tie = 1e-9;

    private readonly double _base;
    private readonly double _exponent;
    private readonly bool _upAdmitsLess;
    private readonly bool _showsTenths;
    private readonly string _prefix;
    private readonly string _spoken;
    private readonly string _unit;
    private readonly FrozenDictionary<StopScale, Scale> _scales;

    /// <param name="prefix">What stands before a mark's text: <c>f/</c> for apertures.</param>
    /// <param name="spoken">What else may stand before it: <c>f</c>, <c>ISO</c>.</param>
    /// <param name="unit">What may stand behind it: <c>s</c> for shutter speeds.</param>
    /// <param name="base">The value at position 0.</param>
    /// <param name="exponent">Doublings of the value to one stop.</param>
    /// <param name="upAdmitsLess">Whether a higher position admits less light.</param>
    /// <param name="showsTenths">Whether a meter shows this setting as a whole-stop mark and a digit.</param>
    /// <param name="aliases">Other texts for marks.</param>
    /// <param name="scales">The marks of each scale.</param>
    internal MarkSeries(
        string prefix,
        string spoken,
        string unit,
        double @base,
        double exponent,
        bool upAdmitsLess,
        bool showsTenths,
        IReadOnlyDictionary<string, string> aliases,
        params Scale[] scales)
    {
        (_prefix, _spoken, _unit) = (prefix, spoken, unit);
        (_base, _exponent) = (@base, exponent);
        (_upAdmitsLess, _showsTenths) = (upAdmitsLess, showsTenths);
        foreach (var scale in scales)
        {
            scale.Index(aliases);
        }

        _scales = scales.ToFrozenDictionary(scale => scale.Kind);
    }

    /// <summary>Finds the mark with <paramref name="text"/> on <paramref name="scale"/>, or null when it has none.</summary>
    /// <param name="text">The mark with or without its prefix or unit, such as <c>f/5.6</c> or <c>30 s</c>.</param>
    /// <param name="scale">The scale on which it stands.</param>
    public Mark? Find(string text, StopScale scale)
    {
        ArgumentNullException.ThrowIfNull(text);
        var marks = MarksOf(scale);
        return marks.StepOf(Key(text)) is { } step ? At(marks, step, scale) : null;
    }

    /// <summary>Finds a whole-stop mark with tenths added in the direction of the series, or null when there is none.</summary>
    public Mark? Find(string text, int tenths)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfNegative(tenths);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(tenths, 9);
        var whole = _scales[StopScale.Whole];
        return whole.StepOf(Key(text)) is { } step
            ? new(whole.TextAt(step)!, tenths, StopScale.Tenth, ValueAt(step + tenths / 10.0))
            : null;
    }

    /// <summary>Whether the text stands for another value on another scale.</summary>
    public bool IsAmbiguous(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var key = Key(text);
        var places = _scales.Values
            .Select(scale => (Step: scale.StepOf(key), PerStop: scale.Kind.StepsPerStop()))
            .Where(place => place.Step is not null)
            .Select(place => (double)place.Step!.Value / place.PerStop);
        return places.Distinct().Count() > 1;
    }

    /// <summary>The nearest mark to <paramref name="value"/>, or null beyond the marks. A tie goes to less light.</summary>
    public Mark? Nearest(double value, StopScale scale)
    {
        Guard.Positive(value);
        var position = PositionOf(value);
        if (scale == StopScale.Tenth && _showsTenths)
        {
            var tenths = Round(position, 10);
            var whole = (int)Floor(tenths / 10.0);
            return _scales[StopScale.Whole].TextAt(whole) is { } text
                ? new(text, tenths - 10 * whole, StopScale.Tenth, ValueAt(tenths / 10.0))
                : null;
        }

        var marks = MarksOf(scale);
        var step = Round(position, marks.Kind.StepsPerStop());
        return marks.TextAt(step) is null ? null : At(marks, step, scale);
    }

    /// <summary>The marks on either side of a number typed as text, to name in a refusal.</summary>
    /// <returns>Marks with their prefix; one or none where the number lies beyond the scale or is no number.</returns>
    public IReadOnlyList<string> Neighbours(string text, StopScale scale)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (MarkText.TryParse(Key(text), out var value) && value > 0)
        {
            var marks = MarksOf(scale);
            var below = (int)Floor(PositionOf(value) * marks.Kind.StepsPerStop());
            return [.. new[] { marks.TextAt(below), marks.TextAt(below + 1) }.OfType<string>().Select(mark => _prefix + mark)];
        }

        return [];
    }

    /// <summary>Light that <paramref name="value"/> admits over <paramref name="mark"/>; positive is more light. [stops]</summary>
    public double RestStops(double value, Mark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        var up = Log2(Guard.Positive(value) / mark.Value) / _exponent;

        // A minus sign would make -0 of 0, which binary messages drop and JSON shows.
        return _upAdmitsLess ? 0 - up : up;
    }

    /// <summary>The exact value at a position. (1)</summary>
    internal double ValueAt(double positionStops) => _base * Pow(2, positionStops * _exponent);

    /// <summary>Every mark of a scale, in the order of rising values.</summary>
    public IReadOnlyList<Mark> All(StopScale scale)
    {
        var marks = MarksOf(scale);
        var whole = Enumerable.Range(marks.FirstStep, marks.Count).Select(step => At(marks, step, scale));
        return scale != StopScale.Tenth || !_showsTenths
            ? [.. whole]
            : [.. whole.SkipLast(1).SelectMany(mark => Enumerable.Range(0, 10).Select(tenths => Find(mark.Text, tenths)!)), whole.Last()];
    }

    /// <summary>Light that <paramref name="value"/> admits over <paramref name="other"/>; positive is more light. [stops]</summary>
    public double Stops(double value, double other) =>
        Log2(_upAdmitsLess ? Guard.Positive(other) / Guard.Positive(value) : Guard.Positive(value) / Guard.Positive(other)) / _exponent;

    /// <summary>The value that admits <paramref name="stops"/> more light than <paramref name="value"/>; negative is less.</summary>
    public double Admitting(double value, double stops) =>
        Guard.Positive(value) * Pow(2, (_upAdmitsLess ? -1 : 1) * Guard.Finite(stops) * _exponent);

    /// <summary>The mark nearest to <paramref name="value"/> that admits no less light, or with
    /// <paramref name="moreLight"/> false no more; the value itself beyond the marks.</summary>
    public double Covering(double value, StopScale scale, bool moreLight)
    {
        if (Nearest(value, scale) is not { } mark)
        {
            return value;
        }

        var sign = moreLight ? 1 : -1;
        return sign * RestStops(value, mark) <= Tie
            ? mark.Value
            : Nearest(Admitting(mark.Value, (double)sign / mark.Scale.StepsPerStop()), scale)?.Value ?? value;
    }

    /// <summary>The text of a mark with its prefix, such as <c>f/5.6</c>.</summary>
    public string Show(Mark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return _prefix + mark.Text;
    }

    private double PositionOf(double value) => Log2(value / _base) / _exponent;

    private int Round(double position, int perStop) =>
        (int)(_upAdmitsLess ? Floor(position * perStop + 0.5 + Tie) : Ceiling(position * perStop - 0.5 - Tie));

    private Mark At(Scale marks, int step, StopScale asked) => new(
        marks.TextAt(step)!,
        0,
        asked == StopScale.Tenth && _showsTenths ? asked : marks.Kind,
        ValueAt((double)step / marks.Kind.StepsPerStop()));

    private Scale MarksOf(StopScale scale) => scale == StopScale.Tenth
        ? _scales[_showsTenths ? StopScale.Whole : StopScale.Third]
        : _scales[scale];

    private string Key(string text) => MarkText.Key(text, _prefix, _spoken, _unit);

    /// <summary>The consecutive marks of one scale.</summary>
    internal sealed class Scale(StopScale kind, int firstStep, string texts)
    {
        private readonly string[] _texts = texts.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        private FrozenDictionary<string, int> _steps = FrozenDictionary<string, int>.Empty;

        public StopScale Kind => kind;

        public int FirstStep => firstStep;

        public int Count => _texts.Length;

        public void Index(IReadOnlyDictionary<string, string> aliases)
        {
            var steps = _texts
                .Select((text, i) => (Key: MarkText.Key(text, "", "", ""), Step: firstStep + i))
                .ToDictionary(mark => mark.Key, mark => mark.Step);
            foreach (var (alias, text) in aliases)
            {
                if (steps.TryGetValue(text, out var step))
                {
                    steps.TryAdd(alias, step);
                }
            }

            _steps = steps.ToFrozenDictionary();
        }

        public int? StepOf(string key) => _steps.TryGetValue(key, out var step) ? step : null;

        public string? TextAt(int step) =>
            step >= firstStep && step < firstStep + _texts.Length ? _texts[step - firstStep] : null;
    }
}

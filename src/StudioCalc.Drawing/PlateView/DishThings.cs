using System.Globalization;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>The things of a dish with their letters: components first, then vessels.</summary>
internal sealed class DishThings
{
    private const double LabelWidth = 20 * Sheet.Letter;

    private readonly List<string> _names;

    public DishThings(EvaluateViewResponse answer)
    {
        _names = [.. answer.Components.Select(component => component.Name), .. answer.Vessels.Select(vessel => vessel.Name)];
        Main = _names.IndexOf(answer.Main.Name);
    }

    /// <summary>The place of the main component.</summary>
    public int Main { get; }

    public string Label(int thing) => Sheet.Cut($"{Letter(thing)} {_names[thing]}", LabelWidth);

    // A to Z, then AA and so on.
    public static string Letter(int index) =>
        (index >= 26 ? Letter(index / 26 - 1) : "") + ((char)('A' + index % 26)).ToString(CultureInfo.InvariantCulture);
}

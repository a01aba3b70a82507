using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What a thing covers of a glossy surface.</summary>
/// <param name="Thing">The thing, by its place in the list.</param>
/// <param name="CoveredShare">Share of the surface in which it mirrors, as the camera sees it.</param>
/// <param name="UncertaintyShare">How far that may be off.</param>
/// <param name="Middle">Where its reflection lies.</param>
/// <param name="Cosine">Mean cosine between rays and normals there.</param>
/// <param name="MirroredShare">Mean share of its light that mirrors.</param>
public sealed record MirroredThingView(
    int Thing, double CoveredShare, double UncertaintyShare, Vector Middle, double Cosine, double MirroredShare);

/// <summary>What a camera sees mirrored in a glossy surface.</summary>
/// <remarks>
/// <code>
/// S = sum of w where the thing is met first / sum of w             (38)
/// u = half the weight of the parts at its edge / sum of w          (39)
/// </code>
/// <para>w: how large a cell of the surface looks from the camera. Each cell's middle is joined to the camera, and the ray mirrored there
/// meets a thing, or none. Cells beside which something else is met are divided into 16; a thing that no ray meets is looked for where
/// one passes it closest, in ever smaller cells. On a waving surface 16 slopes of each cell count alike, and u is the standard error of
/// as many independent cells. Things that stand between camera and surface are left out, and so are other surfaces. Source: law of
/// reflection.</para>
/// </remarks>
public sealed class MirrorView
{
    /// <summary>Slopes that are looked at in each cell of a waving surface.</summary>
    public const int Slopes = 16;

    private readonly MirrorShape _shape;
    private readonly IReadOnlyList<MirrorThing> _things;
    private readonly MirrorGrid _grid;
    private readonly Vector _camera;
    private readonly double _whole;

    private MirrorView(MirrorShape shape, IReadOnlyList<MirrorThing> things, Vector camera, MirrorGrid grid, Gloss gloss)
    {
        (_shape, _things, _camera, _grid) = (shape, things, camera, grid);
        _whole = grid.Lines.Sum(line => line.Weight);
        Reflections = [.. Enumerable.Range(0, things.Count).Select(thing => Reflection(thing, gloss)).OfType<MirroredThingView>()];
    }

    /// <summary>The things that mirror, in their order.</summary>
    public IReadOnlyList<MirroredThingView> Reflections { get; }

    /// <summary>Traces the sight lines. (33), (38), (39)</summary>
    /// <param name="shape">The surface.</param>
    /// <param name="gloss">How much it mirrors.</param>
    /// <param name="things">What may mirror.</param>
    /// <param name="camera">Entrance pupil.</param>
    /// <param name="lines">Sight lines across the surface, from 2.</param>
    /// <param name="stop">Stops it early.</param>
    public static MirrorView Trace(
        MirrorShape shape, Gloss gloss, IReadOnlyList<MirrorThing> things, Vector camera, int lines, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(gloss);
        ArgumentNullException.ThrowIfNull(things);
        return new(shape, things, camera, new(shape, things, camera, lines, stop), gloss);
    }

    /// <summary>A black card that takes a reflection away; null where no one flat card does.</summary>
    /// <param name="reflection">The reflection.</param>
    /// <param name="distanceMm">How far from its middle the card stands. [mm]</param>
    public MirrorCard? Card(MirroredThingView reflection, double distanceMm)
    {
        ArgumentNullException.ThrowIfNull(reflection);
        return MirrorCard.For(_grid, _things[reflection.Thing], reflection, distanceMm, _shape.WaveDeg > 0);
    }

    /// <summary>Share of the surface in which a thing still mirrors with a card in place.</summary>
    /// <param name="card">The card.</param>
    /// <param name="thing">The thing.</param>
    public double LeftShare(MirrorCard card, int thing)
    {
        ArgumentNullException.ThrowIfNull(card);
        return Share(line => line.Thing == thing && !(card.Face.Reach(line.Point.Place, line.Way) < line.Reach));
    }

    /// <summary>Share of the surface whose sight lines to some things a card takes away.</summary>
    /// <param name="card">The card.</param>
    /// <param name="isCounted">Which things count.</param>
    public double TakenShare(MirrorCard card, Func<int, bool> isCounted)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(isCounted);
        return Share(line => line.Thing >= 0 && isCounted(line.Thing) && card.Face.Reach(line.Point.Place, line.Way) < line.Reach);
    }

    /// <summary>Share of the surface that a card hides from the camera.</summary>
    /// <param name="card">The card.</param>
    public double HiddenShare(MirrorCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return Share(line =>
        {
            var way = _camera - line.Point.Place;
            return card.Face.Reach(line.Point.Place, way.Unit()) < way.Length;
        });
    }

    private double Share(Predicate<MirrorLine> counts) => _whole > 0 ? Min(1, _grid.Lines.Where(line => counts(line)).Sum(line => line.Weight) / _whole) : 0;

    private MirroredThingView? Reflection(int thing, Gloss gloss)
    {
        var (sum, place, cosine, mirrored) = (0.0, default(Vector), 0.0, 0.0);
        foreach (var line in _grid.Lines)
        {
            if (line.Thing == thing)
            {
                // The half angle between the ray and its mirrored one, whatever the slope.
                var c = Sqrt(Max(0, 1 + line.Way.Dot((_camera - line.Point.Place).Unit())) / 2);
                (sum, place) = (sum + line.Weight, place + line.Point.Place * line.Weight);
                (cosine, mirrored) = (cosine + c * line.Weight, mirrored + gloss.Share(c) * line.Weight);
            }
        }

        if (sum == 0)
        {
            return null;
        }

        var share = Min(1, sum / _whole);
        var uncertainty = _shape.WaveDeg > 0 ? Sqrt(share * (1 - share) / _grid.Cells) : _grid.EdgeWeight(thing) / _whole;
        return new(thing, share, Min(1, uncertainty), _shape.Nearest(place * (1 / sum)), cosine / sum, mirrored / sum);
    }
}

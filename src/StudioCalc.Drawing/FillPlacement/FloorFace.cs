using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>A flat thing on a floor sketch: a light, a window or a card.</summary>
/// <param name="Name">Its name; empty if it has none.</param>
/// <param name="Corners">Its corners in set coordinates; none for a point.</param>
/// <param name="Centre">Its middle.</param>
/// <param name="Aim">The point that it faces.</param>
/// <param name="Size">Its size in words, such as <c>1.20 x 1.50 m</c>.</param>
/// <param name="Power">Its power in words; empty if it has none.</param>
public sealed record FloorFace(
    string Name, IReadOnlyList<PointAnswer> Corners, PointAnswer Centre, PointAnswer Aim, string Size, string Power);

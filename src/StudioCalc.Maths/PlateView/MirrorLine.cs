namespace StudioCalc.Maths;

/// <summary>A sight line of a camera by way of a glossy surface.</summary>
/// <param name="Across">Place in the grid.</param>
/// <param name="Along">Place in the grid.</param>
/// <param name="Size">Size of its cell in the grid.</param>
/// <param name="Point">Where it meets the surface.</param>
/// <param name="Way">The unit direction in which it goes on.</param>
/// <param name="Weight">How much of the surface it stands for, as the camera sees it.</param>
/// <param name="Thing">The thing that it meets first; -1 for none, or for the dark back of one.</param>
/// <param name="Reach">How far it goes until then. [mm]</param>
internal readonly record struct MirrorLine(
    double Across, double Along, double Size, MirrorPoint Point, Vector Way, double Weight, int Thing, double Reach);

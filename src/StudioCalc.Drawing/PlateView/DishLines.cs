namespace StudioCalc.Drawing;

/// <summary>The lines in which a dish is drawn.</summary>
/// <param name="View">As the camera sees it: to the right of and up from the middle of the frame, in the plane through the aim point. [mm]</param>
/// <param name="Plan">From above: to the right, and away from the front. [mm]</param>
/// <param name="Camera">The entrance pupil in the plan; null for a far camera. [mm]</param>
/// <param name="Aim">The aim point in the plan. [mm]</param>
/// <param name="Towards">Direction from the aim point to the camera, in the plan; without length where it looks straight down.</param>
/// <param name="Field">The corners of the frame in the plane through the aim point, in the plan, in order round it. [mm]</param>
public sealed record DishLines(
    IReadOnlyList<DishStroke> View,
    IReadOnlyList<DishStroke> Plan,
    (double X, double Y)? Camera,
    (double X, double Y) Aim,
    (double X, double Y) Towards,
    IReadOnlyList<(double X, double Y)> Field);

/// <summary>A line of a thing.</summary>
/// <param name="Thing">Whose line it is: components first, then vessels.</param>
/// <param name="IsHidden">Whether something stands before it.</param>
/// <param name="Places">Where it runs. [mm]</param>
public sealed record DishStroke(int Thing, bool IsHidden, IReadOnlyList<(double X, double Y)> Places);

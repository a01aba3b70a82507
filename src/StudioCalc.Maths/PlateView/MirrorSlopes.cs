using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Slopes of a waving surface: spread evenly over the disc of all that count, otherwise in each cell.</summary>
internal static class MirrorSlopes
{
    // An additive sequence in two dimensions.
    private const double Plastic = 0.7548776662466927;

    /// <summary>A normal, tilted as one of the slopes of a cell.</summary>
    public static Vector Tilted(Vector normal, double waveDeg, int slope, int cell)
    {
        var axes = new FaceAxes(default, normal);
        var number = slope + cell * (double)MirrorView.Slopes;
        var tilt = waveDeg * PI / 180 * Sqrt((slope + Fraction(number * Plastic)) / MirrorView.Slopes);
        var turn = 2 * PI * Fraction(number * Plastic * Plastic);
        return axes.Facing * Cos(tilt) + (axes.Right * Cos(turn) + axes.Up * Sin(turn)) * Sin(tilt);
    }

    private static double Fraction(double value) => value - Floor(value);
}

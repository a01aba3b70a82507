namespace StudioCalc.Maths;

/// <summary>Choice of a shutter speed mark within limits.</summary>
public static class ShutterMarks
{
    private const double Rounding = 1e-9;

    /// <summary>The exact values of the marks within limits, from fast to slow. [s]</summary>
    /// <param name="scale">The scale of the marks.</param>
    /// <param name="fastestS">The fastest shutter speed. [s]</param>
    /// <param name="slowestS">The slowest shutter speed. [s]</param>
    public static IEnumerable<double> Within(StopScale scale, double fastestS, double slowestS) =>
        Marks.ShutterSpeed.All(scale)
            .Select(mark => mark.Value)
            .Where(time => time >= fastestS * (1 - Rounding) && time <= slowestS * (1 + Rounding))
            .Order();

    /// <summary>The exact value of the slowest mark within limits, or null when there is none. [s]</summary>
    /// <param name="scale">The scale of the marks.</param>
    /// <param name="fastestS">The fastest shutter speed. [s]</param>
    /// <param name="slowestS">The slowest shutter speed. [s]</param>
    public static double? Slowest(StopScale scale, double fastestS, double slowestS) =>
        Within(scale, fastestS, slowestS).Select(time => (double?)time).LastOrDefault();
}

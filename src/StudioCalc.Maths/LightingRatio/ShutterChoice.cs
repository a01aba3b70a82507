using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A shutter speed that can be set with flash, near one that is wanted.</summary>
/// <param name="ShutterSpeedS">The shutter speed to set. [s]</param>
/// <param name="IsNearest">Whether it is the nearest mark, or the wanted value where there are no marks; otherwise a limit.</param>
/// <param name="Obstacle">The limit that stands in the way, if any.</param>
/// <param name="ShortfallStops">How far it stands in the way; 0 when none does. [stops]</param>
internal readonly record struct ShutterChoice(
    double ShutterSpeedS, bool IsNearest, BalanceObstacle Obstacle, double ShortfallStops)
{
    private const double Rounding = 1e-9;

    /// <summary>Chooses between the sync speed and the slowest shutter speed allowed.</summary>
    public static ShutterChoice For(double wantedS, StopScale scale, double syncSpeedS, double slowestS)
    {
        var nearest = Marks.ShutterSpeed.Nearest(wantedS, scale)?.Value ?? wantedS;

        // A mark beyond a limit that lies between marks gives way to the limit, which can be set as well.
        var t = Clamp(nearest, syncSpeedS, slowestS);
        var beyondSync = Log2(syncSpeedS / wantedS);
        var beyondSlowest = Log2(wantedS / slowestS);
        var (obstacle, shortfall) = Abs(Log2(t / nearest)) <= Rounding ? (BalanceObstacle.None, 0)
            : beyondSync > Rounding ? (BalanceObstacle.SyncSpeed, beyondSync)
            : beyondSlowest > Rounding ? (BalanceObstacle.SlowestShutterSpeed, beyondSlowest)
            : (BalanceObstacle.None, 0);
        return new(t, t == nearest, obstacle, shortfall);
    }
}

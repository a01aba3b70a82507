namespace StudioCalc.Maths;

/// <summary>Water that condenses on a cold surface.</summary>
/// <remarks>
/// <code>
/// m = hc / (cp Le^(2/3)) (wa - ws),   film = m / 1000                (35)
/// </code>
/// <para>The low-rate form: below the dew point rates are small, and the logarithm of <see cref="SurfaceLoss"/> (8) adds nothing. film:
/// growth in m/s. Source: as (8).</para>
/// </remarks>
public static class Condensation
{
    /// <summary>Growth of the film; null where the surface is not below the dew point. (35) [µm/s]</summary>
    /// <param name="room">The room.</param>
    /// <param name="surfaceCelsius">Temperature of the surface. [°C]</param>
    public static double? FilmUmPerS(Room room, double surfaceCelsius)
    {
        ArgumentNullException.ThrowIfNull(room);
        if (surfaceCelsius >= room.Air.DewPointCelsius)
        {
            return null;
        }

        const double glassHeightMm = 120;
        var loss = room.SurfaceAt(surfaceCelsius, FlowForm.Upright, glassHeightMm, 1, 1);
        return -loss.LowRateVapourAt(surfaceCelsius) / 1000 * 1e6;
    }
}

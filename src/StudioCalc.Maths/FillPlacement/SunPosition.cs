using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Where the sun stands, seen from a place on the Earth.</summary>
/// <param name="BearingDeg">Bearing from true north over east, from 0, below 360. [deg]</param>
/// <param name="TrueElevationDeg">Elevation of its centre without refraction. [deg]</param>
/// <param name="ElevationDeg">Elevation of its centre with common refraction. [deg]</param>
/// <remarks>
/// <code>
/// d  = s / 86400 - 10957.5                  T = (d + 70 / 86400) / 36525                              (62)
/// L0 = 280.46646 + 36000.76983 T + 0.0003032 T²                                                      (63)
/// M  = 357.52911 + 35999.05029 T - 0.0001537 T²
/// C  = (1.914602 - 0.004817 T - 0.000014 T²) sin(M) + (0.019993 - 0.000101 T) sin(2 M) + 0.000289 sin(3 M)
/// O  = 125.04 - 1934.136 T
/// l  = L0 + C - 0.00569 - 0.00478 sin(O)                                                              (64)
/// E  = 23.439291 - 0.0130042 T + 0.00256 cos(O)
/// sin(D) = sin(E) sin(l)                    A = atan2(cos(E) sin(l), cos(l))                          (65)
/// H  = 280.46061837 + 360.98564736629 d - 0.00478 sin(O) cos(E) + lon - A                             (66)
/// sin(h) = sin(lat) sin(D) + cos(lat) cos(D) cos(H)                                                   (67)
/// B  = atan2(-cos(D) sin(H), sin(D) cos(lat) - cos(D) cos(H) sin(lat))
/// ht = h - 0.002443 cos(h)                                                                            (68)
/// ha = ht + 0.017 / tan(ht + 10.3 / (ht + 5.11))                                                      (69)
/// </code>
/// <para>s: seconds since 1 January 1970, 0:00 UTC. d: days since 2000, noon. T: the same in centuries, with 70 s between Earth time
/// and uniform time. L0, M, l: mean longitude, anomaly, apparent longitude. E: obliquity. D, A: declination, right ascension.
/// H: hour angle. h, ht, ha: elevation from the Earth's centre, from its surface, and with refraction at 1010 hPa and 10 °C.
/// B: bearing. Below -1 degree the refraction of -1 degree is kept. Within 0.01 degree from 1950 to 2100. Source: J. Meeus, Astronomical
/// Algorithms (1998), chapters 12, 13, 16 and 25, and G. G. Bennett's refraction as turned round by T. Saemundsson, from
/// memory; held against NREL/TP-560-34302 and a general-purpose library in tests.</para>
/// </remarks>
public readonly record struct SunPosition(double BearingDeg, double TrueElevationDeg, double ElevationDeg)
{
    /// <summary>Where the sun stands at a moment.</summary>
    /// <param name="unixTimeS">Seconds since 1 January 1970, 0:00 UTC.</param>
    /// <param name="latitudeDeg">Latitude, positive north. [deg]</param>
    /// <param name="longitudeDeg">Longitude, positive east. [deg]</param>
    public static SunPosition At(double unixTimeS, double latitudeDeg, double longitudeDeg)
    {
        var none = default(NoTrail);
        return At(unixTimeS, latitudeDeg, longitudeDeg, ref none);
    }

    /// <summary>The same, followed step by step.</summary>
    /// <param name="unixTimeS">Seconds since 1 January 1970, 0:00 UTC.</param>
    /// <param name="latitudeDeg">Latitude, positive north. [deg]</param>
    /// <param name="longitudeDeg">Longitude, positive east. [deg]</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field of the moment, with its dot.</param>
    public static SunPosition At<TTrail>(
        double unixTimeS, double latitudeDeg, double longitudeDeg, ref TTrail trail, string answerField = "")
        where TTrail : struct, ITrail
    {
        var s = trail.Given("s", Guard.Finite(unixTimeS), "s", "time since 1 January 1970, 0:00 UTC");
        var lat = trail.Given("lat", Guard.Finite(latitudeDeg) * PI / 180, "rad", "place.latitude_deg");
        var lon = trail.Given("lon", Guard.Finite(longitudeDeg), "deg", "place.longitude_deg");
        var deg = trail.Given("deg", PI / 180, "rad", "one degree");
        var d = trail.Let("d", s / 86400 - 10957.5, "", "fill placement (62), days");
        var T = trail.Let("T", (d + 70.0 / 86400) / 36525, "", "fill placement (62), centuries");
        var L0 = trail.Let("L0", 280.46646 + 36000.76983 * T + 0.0003032 * T * T, "deg", "fill placement (63)");
        var M = trail.Let("M", (357.52911 + 35999.05029 * T - 0.0001537 * T * T) * deg, "rad", "fill placement (63)");
        var C = trail.Let(
            "C",
            (1.914602 - 0.004817 * T - 0.000014 * T * T) * Sin(M) + (0.019993 - 0.000101 * T) * Sin(2 * M) + 0.000289 * Sin(3 * M),
            "deg",
            "fill placement (63)");
        var O = trail.Let("O", (125.04 - 1934.136 * T) * deg, "rad", "fill placement (63)");
        var l = trail.Let("l", (L0 + C - 0.00569 - 0.00478 * Sin(O)) * deg, "rad", "fill placement (64)");
        var E = trail.Let("E", (23.439291 - 0.0130042 * T + 0.00256 * Cos(O)) * deg, "rad", "fill placement (64)");
        var D = trail.Let("D", Asin(Sin(E) * Sin(l)), "rad", "fill placement (65)");
        var A = trail.Let("A", Atan2(Cos(E) * Sin(l), Cos(l)) / deg, "deg", "fill placement (65)");
        var H = trail.Let(
            "H", (280.46061837 + 360.98564736629 * d - 0.00478 * Sin(O) * Cos(E) + lon - A) * deg, "rad", "fill placement (66)");
        var x = trail.Let("x", Sin(lat) * Sin(D) + Cos(lat) * Cos(D) * Cos(H), "", "fill placement (67)");
        var h = trail.Let("h", Asin(Max(-1, Min(1, x))), "rad", "fill placement (67)");
        var b = trail.Let(
            "b", Atan2(-Cos(D) * Sin(H), Sin(D) * Cos(lat) - Cos(D) * Cos(H) * Sin(lat)) / deg, "deg", "fill placement (67), from -180");
        var B = trail.Let("B", b - 360 * Floor(b / 360), "deg", "fill placement (67)", Field("bearing_deg"));
        var ht = trail.Let("ht", h / deg - 0.002443 * Cos(h), "deg", "fill placement (68)");
        var hr = trail.Let("hr", Max(-1, ht), "deg", "fill placement (69), kept below -1 degree");
        var ha = trail.Let("ha", ht + 0.017 / Tan((hr + 10.3 / (hr + 5.11)) * deg), "deg", "fill placement (69)", Field("elevation_deg"));
        return new(B, ht, ha);

        string Field(string name) => answerField.Length == 0 ? "" : answerField + name;
    }
}

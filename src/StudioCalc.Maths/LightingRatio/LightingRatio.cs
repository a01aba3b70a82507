using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A lighting ratio in both conventions in use.</summary>
/// <remarks>
/// <code>
/// R1 = 2^k              key to fill, each read alone              (1)
/// R2 = 2^k + 1          key and fill together to fill             (2)
/// </code>
/// <para>k: key over fill in stops. (2) holds only where both lights reach the surface. The name 3:1 is 1.585 stops in
/// (1) and 1 stop in (2). Sources: for (2) US Navy training course NAVEDTRA 14209, Photography (Basic), 1993, lighting
/// ratios; for (1) articles on film lighting; see docs/models/lighting-ratio.md.</para>
/// </remarks>
/// <param name="KeyToFill">Key to fill, each read alone.</param>
/// <param name="KeyPlusFillToFill">Both together to the fill alone.</param>
public readonly record struct LightingRatio(double KeyToFill, double KeyPlusFillToFill)
{
    /// <summary>The ratios of a key that stands <paramref name="stops"/> over the fill.</summary>
    public static LightingRatio FromStops<TTrail>(double stops, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var kSet = Guard.Finite(stops);
        var R1 = trail.Let("R1", Pow(2, kSet), "", "lighting ratio (1)", "ratio.key_to_fill");
        return new(R1, trail.Let("R2", R1 + 1, "", "lighting ratio (2)", "ratio.key_plus_fill_to_fill"));
    }
}

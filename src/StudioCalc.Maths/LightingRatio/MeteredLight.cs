using static System.Math;

namespace StudioCalc.Maths;

/// <summary>One metered light: light that stays on, or flash.</summary>
/// <remarks>
/// <code>
/// V = E + log2(t)       light that stays on                       (10)
/// V = F                 flash                                     (10)
/// </code>
/// <para>V: what the light gives a frame of shutter speed t, in stops; one more is twice the light. Flash does not depend
/// on t at sync speed or slower. The default is light that stays on at exposure value 0. Source: equations (4) and (7) of
/// docs/models/exposure.md, of which V holds what differs from light to light.</para>
/// </remarks>
public readonly record struct MeteredLight
{
    private readonly double _levelStops;

    /// <summary>Makes a light that stays on.</summary>
    public MeteredLight(LightLevel level) => _levelStops = level.ExposureValueIso100Stops;

    /// <summary>Makes a flash.</summary>
    public MeteredLight(FlashLevel level) => (_levelStops, IsFlash) = (level.FlashValueIso100Stops, true);

    /// <summary>Whether it is flash.</summary>
    public bool IsFlash { get; }

    /// <summary>What the light gives a frame. (10) [stops]</summary>
    /// <param name="shutterSpeedS">Shutter speed in s, above 0.</param>
    /// <param name="trail">Follows the sum.</param>
    public double ValueStops<TTrail>(double shutterSpeedS, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (IsFlash)
        {
            var F = trail.Given("F", _levelStops, "stops", "flash value at ISO 100");
            return trail.Let("V", F, "stops", "lighting ratio (10)");
        }

        var E = trail.Given("E", _levelStops, "stops", "exposure value at ISO 100");
        var t = trail.Given("t", Guard.Positive(shutterSpeedS), "s", "shutter speed");
        return trail.Let("V", E + Log2(t), "stops", "lighting ratio (10)");
    }
}

namespace StudioCalc.Maths;

/// <summary>A face whose light can be added to that of others.</summary>
/// <remarks>
/// <code>
/// v = g e         g = 100 k / C, times t for light that stays on       (18)
/// </code>
/// <para>v: light as metered, (11). e: light of the face by unit luminance, (5) to (8). k: strength of the source, (9). C:
/// calibration constant. t: shutter speed in s. A single source without calibration has g = 1.</para>
/// </remarks>
/// <param name="Face">The face.</param>
/// <param name="Weight">Its weight g.</param>
public readonly record struct WeighedFace(LightFace Face, double Weight)
{
    /// <summary>Weighs a face. (18)</summary>
    /// <param name="face">The face.</param>
    /// <param name="level">How bright it is; null where only changes count.</param>
    /// <param name="collector">What the receivers collect.</param>
    /// <param name="shutterSpeedS">Shutter speed t; 1 where flash and light that stays on do not mix. [s]</param>
    public static WeighedFace Of(LightFace face, SourceLevel? level, Collector collector, double shutterSpeedS)
    {
        if (level is null)
        {
            return new(face, 1);
        }

        var none = default(NoTrail);
        var metered = level.Metered(level.At(1, ref none), collector, ref none);
        return new(face, level.IsFlash ? metered : metered * Guard.Positive(shutterSpeedS));
    }

    /// <summary>Light v at a place, followed step by step. (18)</summary>
    /// <param name="at">The receiver.</param>
    /// <param name="trail">Follows the sum.</param>
    public double Light<TTrail>(in LightPoint at, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var e = Face.Light(at, ref trail);
        var g = trail.Given("g", Weight, "", "fill placement (18), 1 without a calibration");
        return trail.Let("v", g * e, "", "fill placement (18)");
    }
}

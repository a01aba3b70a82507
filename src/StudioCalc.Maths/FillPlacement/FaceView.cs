using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How a face looks from a place.</summary>
/// <remarks>
/// <code>
/// s = max over corners of atan2(|a x b|, a . b)                                    (12)
/// p = A (c . k) (c . n) / (d^4 e)     a point in the face's centre over the face   (13)
/// F = e A0 / (pi A)                   share of a full view                         (14)
/// s = atan2(|a x b|, a . b)           across, or up                                (35)
/// </code>
/// <para>s: subtense, the largest angle between two corners a, b from the place; exact for outlines without curves. A, A0: area of the
/// face with and without its core weighed by luminance. c: way from receiver to centre, d its length; -k: the way that the face looks; n: the
/// receiver's normal. e: light of the face, <see cref="LightFace"/>. In (35) a and b are the points at the height of the centre as far left
/// and right as the outline reaches, or above and below the centre as far as it does.</para>
/// </remarks>
public static class FaceView
{
    /// <summary>The largest angle s between two points of the face; 0 for a point. (12) [deg]</summary>
    /// <param name="face">The face.</param>
    /// <param name="place">Where it is looked at from.</param>
    public static double SubtenseDeg(LightFace face, Vector place)
    {
        ArgumentNullException.ThrowIfNull(face);
        var corners = face.Corners;
        Span<Vector> ways = stackalloc Vector[FaceOutline.MostCorners];
        ways = ways[..corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            ways[i] = (corners[i] - place).Unit();
        }

        var (a, b, largest) = (0, 0, 0.0);
        for (var i = 0; i < ways.Length; i++)
        {
            for (var j = i + 1; j < ways.Length; j++)
            {
                var gap = ways[i] - ways[j];
                if (gap.Dot(gap) > largest)
                {
                    (a, b, largest) = (i, j, gap.Dot(gap));
                }
            }
        }

        return a == b ? 0 : AngleDeg(corners[a] - place, corners[b] - place);
    }

    /// <summary>The angles between the left and right and between the lower and upper edge; 0 for a point. (35) [deg]</summary>
    /// <param name="face">The face.</param>
    /// <param name="place">Where it is looked at from.</param>
    public static (double AcrossDeg, double UpDeg) ExtentsDeg(LightFace face, Vector place)
    {
        ArgumentNullException.ThrowIfNull(face);
        var axes = face.Axes;
        var (left, right, low, high) = (0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < face.Corners.Length; i++)
        {
            var way = face.Corners[i] - axes.Centre;
            var (x, y) = (way.Dot(axes.Right), way.Dot(axes.Up));
            (left, right, low, high) = i == 0 ? (x, x, y, y) : (Min(left, x), Max(right, x), Min(low, y), Max(high, y));
        }

        return (AngleDeg(axes.At(left, 0) - place, axes.At(right, 0) - place), AngleDeg(axes.At(0, low) - place, axes.At(0, high) - place));
    }

    /// <summary>Light of a face over that of one of the same mean luminance all around, from 0 to 1. (14)</summary>
    /// <param name="face">A face, not a point.</param>
    /// <param name="light">Its light e at a receiver.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="answerField">The answer field that equals it.</param>
    public static double Share<TTrail>(LightFace face, double light, ref TTrail trail, string answerField)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(face);
        var pi = trail.Given("pi", PI, "", "half a turn");
        var e = trail.Given("e", light, "sr", "light of the face, by unit luminance of the rim");
        var r = trail.Given("r", face.Area / face.WeighedArea, "", "rim's luminance over the mean");
        return trail.Let("F", e * r / pi, "", "fill placement (14)", answerField);
    }

    /// <summary>The angle between two directions. [deg]</summary>
    public static double AngleDeg(Vector a, Vector b) => Atan2(a.Cross(b).Length, a.Dot(b)) * 180 / PI;

    /// <summary>Stops by which a point of the same intensity in the centre overstates a face; null where either gives none. (13)</summary>
    /// <param name="face">A face, not a point.</param>
    /// <param name="at">The receiver.</param>
    public static double? PointOverstatesStops(LightFace face, in LightPoint at)
    {
        ArgumentNullException.ThrowIfNull(face);
        var point = LightFace.Point(face.Axes).Light(at);
        var way = at.Place - face.Axes.Centre;
        var intensity = face.WeighedArea * Max(0, way.Dot(face.Axes.Facing)) / way.Length;
        var light = face.Light(at);
        return point * intensity > 0 && light > 0 ? Log2(point * intensity / light) : null;
    }
}

using System.Runtime.CompilerServices;
using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The span of a line of sight that lies within a simple body, cut from a span already known.</summary>
internal static class Spans
{
    /// <summary>Between two planes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Within(double from, double along, double low, double high, ref double enter, ref double leave)
    {
        if (along == 0)
        {
            return from >= low && from <= high;
        }

        var inverse = 1 / along;
        var (a, b) = ((low - from) * inverse, (high - from) * inverse);
        (enter, leave) = (Max(enter, Min(a, b)), Min(leave, Max(a, b)));
        return enter <= leave;
    }

    /// <summary>Within the circle x² + y² = (radius + slope z)², where the radius is not negative in the span.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool WithinCone(
        double ox, double oy, double oz, double dx, double dy, double dz, double radius, double slope, ref double enter, ref double leave)
    {
        var (r0, r1) = (radius + slope * oz, slope * dz);
        return Inside(dx * dx + dy * dy - r1 * r1, ox * dx + oy * dy - r0 * r1, ox * ox + oy * oy - r0 * r0, ref enter, ref leave);
    }

    /// <summary>Within the rectangle max(|x|, |y|) = radius + slope z.</summary>
    public static bool WithinPyramid(
        double ox, double oy, double oz, double dx, double dy, double dz, double radius, double slope, ref double enter, ref double leave)
    {
        var (r0, r1) = (radius + slope * oz, slope * dz);
        return Below(ox - r0, dx - r1, ref enter, ref leave) && Below(-ox - r0, -dx - r1, ref enter, ref leave)
            && Below(oy - r0, dy - r1, ref enter, ref leave) && Below(-oy - r0, -dy - r1, ref enter, ref leave);
    }

    /// <summary>Within x² + y² + ((z - middle) / half)² = 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool WithinBall(
        double ox, double oy, double oz, double dx, double dy, double dz, double middle, double half, ref double enter, ref double leave)
    {
        var inverse = 1 / half;
        (oz, dz) = ((oz - middle) * inverse, dz * inverse);
        return Inside(dx * dx + dy * dy + dz * dz, ox * dx + oy * dy + oz * dz, ox * ox + oy * oy + oz * oz - 1, ref enter, ref leave);
    }

    // Where from + along t is not positive.
    private static bool Below(double from, double along, ref double enter, ref double leave)
    {
        if (along == 0)
        {
            return from <= 0;
        }

        var root = -from / along;
        (enter, leave) = along > 0 ? (enter, Min(leave, root)) : (Max(enter, root), leave);
        return enter <= leave;
    }

    // Where a t² + 2 b t + c is not positive. With a below 0 that is outside of two roots: of a cone cut at its top only one of the
    // two parts lies within the height.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Inside(double a, double b, double c, ref double enter, ref double leave)
    {
        if (a == 0 && b == 0)
        {
            return c <= 0 && enter <= leave;
        }

        if (Abs(a) < 1e-14 * Abs(b))
        {
            var root = -c / (2 * b);
            (enter, leave) = b > 0 ? (enter, Min(leave, root)) : (Max(enter, root), leave);
            return enter <= leave;
        }

        var under = b * b - a * c;
        if (a > 0)
        {
            if (under < 0)
            {
                return false;
            }

            var (q, inverse) = (Sqrt(under), 1 / a);
            (enter, leave) = (Max(enter, (-b - q) * inverse), Min(leave, (q - b) * inverse));
            return enter <= leave;
        }

        if (under <= 0)
        {
            return enter <= leave;
        }

        var s = Sqrt(under);
        var (low, high) = ((-b + s) / a, (-b - s) / a);
        if (enter <= low)
        {
            leave = Min(leave, low);
            return enter <= leave;
        }

        enter = Max(enter, high);
        return enter <= leave;
    }
}

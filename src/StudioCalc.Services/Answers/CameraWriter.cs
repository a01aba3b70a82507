using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes exact values as answers: the value, its nearest mark, and the rest.</summary>
/// <remarks>Where limits are given, a mark beyond them is left out: it cannot be set, and the exact value, which then lies
/// at or near the limit, stands alone.</remarks>
internal static class CameraWriter
{
    private const double Rounding = 1e-9;

    public static ApertureAnswer Aperture(
        double fNumber, Maths.StopScale scale, double widest = 0, double smallest = double.PositiveInfinity)
    {
        var answer = new ApertureAnswer { FNumber = fNumber, Scale = scale.ToContract() };
        if (Within(Marks.Aperture.Nearest(fNumber, scale), widest, smallest) is { } mark)
        {
            answer.Mark = Marks.Aperture.Show(mark);
            answer.RestStops = Marks.Aperture.RestStops(fNumber, mark);
            if (scale == Maths.StopScale.Tenth)
            {
                answer.Tenths = (uint)mark.Tenths;
            }
        }

        return answer;
    }

    public static ShutterSpeedAnswer ShutterSpeed(
        double timeS, Maths.StopScale scale, double fastest = 0, double slowest = double.PositiveInfinity)
    {
        var answer = new ShutterSpeedAnswer { TimeS = timeS, Scale = Dial(scale).ToContract() };
        if (Within(Marks.ShutterSpeed.Nearest(timeS, scale), fastest, slowest) is { } mark)
        {
            answer.Mark = Marks.ShutterSpeed.Show(mark);
            answer.RestStops = Marks.ShutterSpeed.RestStops(timeS, mark);
        }

        return answer;
    }

    public static IsoAnswer Iso(
        double speed, Maths.StopScale scale, double lowest = 0, double highest = double.PositiveInfinity)
    {
        var answer = new IsoAnswer { Speed = speed, Scale = Dial(scale).ToContract() };
        if (Within(Marks.Iso.Nearest(speed, scale), lowest, highest) is { } mark)
        {
            answer.Mark = Marks.Iso.Show(mark);
            answer.RestStops = Marks.Iso.RestStops(speed, mark);
        }

        return answer;
    }

    public static FlashPowerAnswer Power(double belowFullStops)
    {
        var (fraction, offset) = FlashPowers.Show(belowFullStops);
        return new() { BelowFullStops = belowFullStops, Fraction = fraction, OffsetStops = offset };
    }

    private static Mark? Within(Mark? mark, double lowest, double highest) =>
        mark is not null && mark.Value >= lowest * (1 - Rounding) && mark.Value <= highest * (1 + Rounding) ? mark : null;

    // Shutter speeds and ISO have no tenth marks.
    private static Maths.StopScale Dial(Maths.StopScale scale) => scale == Maths.StopScale.Tenth ? Maths.StopScale.Third : scale;
}

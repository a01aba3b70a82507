using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes exact values as answers: the value, its nearest mark, and the rest.</summary>
internal static class CameraWriter
{
    public static ApertureAnswer Aperture(double fNumber, Maths.StopScale scale)
    {
        var answer = new ApertureAnswer { FNumber = fNumber, Scale = scale.ToContract() };
        if (Marks.Aperture.Nearest(fNumber, scale) is { } mark)
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

    public static ShutterSpeedAnswer ShutterSpeed(double timeS, Maths.StopScale scale)
    {
        var answer = new ShutterSpeedAnswer { TimeS = timeS, Scale = Dial(scale).ToContract() };
        if (Marks.ShutterSpeed.Nearest(timeS, scale) is { } mark)
        {
            answer.Mark = Marks.ShutterSpeed.Show(mark);
            answer.RestStops = Marks.ShutterSpeed.RestStops(timeS, mark);
        }

        return answer;
    }

    public static IsoAnswer Iso(double speed, Maths.StopScale scale)
    {
        var answer = new IsoAnswer { Speed = speed, Scale = Dial(scale).ToContract() };
        if (Marks.Iso.Nearest(speed, scale) is { } mark)
        {
            answer.Mark = Marks.Iso.Show(mark);
            answer.RestStops = Marks.Iso.RestStops(speed, mark);
        }

        return answer;
    }

    public static FlashPowerAnswer Power(double stopsBelowFull)
    {
        var (fraction, offset) = FlashPowers.Show(stopsBelowFull);
        return new() { StopsBelowFull = stopsBelowFull, Fraction = fraction, OffsetStops = offset };
    }

    // Shutter speeds and ISO have no tenth marks.
    private static Maths.StopScale Dial(Maths.StopScale scale) => scale == Maths.StopScale.Tenth ? Maths.StopScale.Third : scale;
}

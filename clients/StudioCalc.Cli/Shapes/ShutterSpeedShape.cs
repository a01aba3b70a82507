using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>A shutter speed as the camera shows it: <c>1/125</c>, <c>0.5</c> or <c>30 s</c>.</summary>
internal static class ShutterSpeedShape
{
    public static ShutterSpeed Read(string text)
    {
        MarkText.RefuseComma(text);
        return ShutterSpeed.At(text.Trim());
    }

    public static string? Write(ShutterSpeed speed) => speed.HasMark ? speed.Mark : null;

    public static string Show(ShutterSpeedAnswer speed) => speed.HasMark
        ? speed.Mark + " s" + MarkText.Exact(speed.RestStops, Units.Number(speed.TimeS) + " s")
        : $"{Units.Number(speed.TimeS)} s";
}

using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>Shared shapes of answers as one short text, the way a photographer says them.</summary>
internal static class ShortForms
{
    /// <summary>The text, or null when the message has no short form.</summary>
    public static string? Of(IMessage message) => message switch
    {
        ApertureAnswer aperture => ApertureShape.Show(aperture),
        ShutterSpeedAnswer speed => ShutterSpeedShape.Show(speed),
        IsoAnswer iso => IsoShape.Show(iso),
        FlashPowerAnswer power => FlashPowerShape.Show(power),
        LightingRatio ratio => string.Create(
            CultureInfo.InvariantCulture,
            $"{(ratio.KeyToFill < 1 ? $"1:{1 / ratio.KeyToFill:0.##}" : $"{ratio.KeyToFill:0.##}:1")} key to fill; {ratio.KeyPlusFillToFill:0.##}:1 key and fill to fill, where both reach"),
        Duration time => TimeShape.Show(time),
        Timestamp moment => moment.ToDateTime().ToString("yyyy-MM-dd HH:mm:ss 'UTC'", CultureInfo.InvariantCulture),
        _ => null,
    };
}

using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Services;

/// <summary>Process times of the contract as seconds, and back.</summary>
internal static class Times
{
    public static double ToSeconds(this Duration time) => time.Seconds + time.Nanos / 1e9;

    public static Duration ToDuration(this double seconds)
    {
        var whole = Math.Floor(seconds);
        var nanos = (int)Math.Round((seconds - whole) * 1e9);
        return nanos == 1_000_000_000 ? new() { Seconds = (long)whole + 1 } : new() { Seconds = (long)whole, Nanos = nanos };
    }
}

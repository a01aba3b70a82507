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

    /// <summary>To the whole millisecond, half up. [ms]</summary>
    public static long ToMilliseconds(this Duration time) => time.Seconds * 1000 + (time.Nanos + 500_000) / 1_000_000;

    /// <param name="milliseconds">Not negative. [ms]</param>
    public static Duration FromMilliseconds(long milliseconds) => new() { Seconds = milliseconds / 1000, Nanos = (int)(milliseconds % 1000) * 1_000_000 };
}

using System.Globalization;
using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Drawing;

/// <summary>Times of a day as its people read them off a clock.</summary>
/// <remarks>Seconds are told where any time of the day has some. On a day on which the clocks change every time has its offset, so that
/// the repeated hour is no riddle. Times of a later date tell how many days later.</remarks>
internal sealed class SheetClock
{
    private readonly Func<Duration, DateTimeOffset> _local;
    private readonly DateTimeOffset _start;
    private readonly bool _hasSeconds;
    private readonly bool _hasOffsets;

    /// <summary>A clock for some times.</summary>
    /// <param name="local">The local time so long after the start.</param>
    /// <param name="times">All times that are to be told.</param>
    public SheetClock(Func<Duration, DateTimeOffset> local, IReadOnlyCollection<Duration> times)
    {
        (_local, _start) = (local, local(new()));
        var told = times.Select(local).ToList();
        _hasSeconds = told.Any(time => Rounded(time, TimeSpan.TicksPerSecond / 2, TimeSpan.TicksPerSecond).Second != 0);
        _hasOffsets = told.Any(time => time.Offset != _start.Offset);
    }

    /// <summary>The date of the start, in words.</summary>
    public string Date => _start.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>The offset of the start from UTC.</summary>
    public string Offset => OffsetOf(_start);

    /// <summary>A time as the clock shows it.</summary>
    public string At(Duration after) => Text(Rounded(_local(after), TimeSpan.TicksPerSecond / 2, TimeSpan.TicksPerSecond), _hasSeconds);

    /// <summary>A time to the minute, for what nobody knows to the second: the minute at which it is over.</summary>
    public string ByMinute(Duration after) =>
        Text(Rounded(_local(after), TimeSpan.TicksPerMinute - 1, TimeSpan.TicksPerMinute), withSeconds: false);

    private string Text(DateTimeOffset time, bool withSeconds)
    {
        var text = time.ToString(withSeconds ? "HH:mm:ss" : "HH:mm", CultureInfo.InvariantCulture);
        var days = (time.Date - _start.Date).Days;
        return string.Concat(
            text,
            _hasOffsets ? " " + OffsetOf(time) : "",
            days > 0 ? string.Create(CultureInfo.InvariantCulture, $" (+{days} {(days == 1 ? "day" : "days")})") : "");
    }

    /// <summary>A stretch of time as two.</summary>
    public string Span(Duration from, Duration until) => $"{At(from)}–{At(until)}";

    /// <summary>How long something takes, in words.</summary>
    public static string Length(double seconds)
    {
        var whole = (long)Math.Round(Math.Abs(seconds));
        var (hours, minutes, rest) = (whole / 3600, whole / 60 % 60, whole % 60);
        string[] parts =
        [
            .. hours > 0 ? [string.Create(CultureInfo.InvariantCulture, $"{hours} h")] : Array.Empty<string>(),
            .. minutes > 0 ? [string.Create(CultureInfo.InvariantCulture, $"{minutes} min")] : Array.Empty<string>(),
            .. rest > 0 || whole == 0 ? [string.Create(CultureInfo.InvariantCulture, $"{rest} s")] : Array.Empty<string>(),
        ];
        return string.Join(' ', parts);
    }

    /// <summary>How long something takes, in words.</summary>
    public static string Length(Duration time) => Length(time.ToTimeSpan().TotalSeconds);

    // Down to a whole step after something is added.
    private static DateTimeOffset Rounded(DateTimeOffset time, long added, long step) => time.AddTicks(added - (time.Ticks + added) % step);

    private static string OffsetOf(DateTimeOffset time) => "UTC" + time.ToString("zzz", CultureInfo.InvariantCulture);
}

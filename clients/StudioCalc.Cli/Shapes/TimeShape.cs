using System.Globalization;
using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Cli;

/// <summary>Process times: <c>2 min 30 s</c>, <c>1 h 20 min</c>, <c>90 s</c>.</summary>
internal static class TimeShape
{
    private const long LongestSeconds = 315_576_000_000;
    private const int NanosPerSecond = 1_000_000_000;

    public static Duration Read(string text)
    {
        var seconds = QuantityText.Read(text, QuantityKind.Time, QuantityKind.Time.Units[0]);
        if (Math.Abs(seconds) > LongestSeconds)
        {
            throw new FormatException($"\"{text}\" is longer than any time that the contract holds.");
        }

        var whole = (long)seconds;
        var nanos = (int)Math.Round((seconds - whole) * NanosPerSecond);
        return Math.Abs(nanos) == NanosPerSecond
            ? new() { Seconds = whole + Math.Sign(nanos) }
            : new() { Seconds = whole, Nanos = nanos };
    }

    /// <summary>The text that reads as the same time.</summary>
    public static string Write(Duration time)
    {
        if (time.Nanos != 0 || time.Seconds <= 0)
        {
            return (time.Seconds + (time.Nanos / (decimal)NanosPerSecond)).ToString("0.#########", CultureInfo.InvariantCulture) + " s";
        }

        var (hours, minutes, seconds) = (time.Seconds / 3600, time.Seconds / 60 % 60, time.Seconds % 60);
        (long Count, string Unit)[] parts = [(hours, "h"), (minutes, "min"), (seconds, "s")];
        return string.Join(' ', parts.Where(part => part.Count > 0).Select(part => string.Create(CultureInfo.InvariantCulture, $"{part.Count} {part.Unit}")));
    }

    /// <summary>The time as answers show it; above an hour without seconds where there are none.</summary>
    public static string Show(Duration time) => time.ToTimeSpan() switch
    {
        { TotalHours: >= 1, Seconds: 0 } span => string.Create(CultureInfo.InvariantCulture, $"{(int)span.TotalHours} h {span.Minutes} min"),
        { TotalHours: >= 1 } span => string.Create(CultureInfo.InvariantCulture, $"{(int)span.TotalHours} h {span.Minutes} min {span.Seconds} s"),
        { TotalMinutes: >= 1 } span => string.Create(CultureInfo.InvariantCulture, $"{span.Minutes} min {span.Seconds} s"),
        var span => Units.Number(span.TotalSeconds) + " s",
    };
}

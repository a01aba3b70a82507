using System.Globalization;
using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Cli;

/// <summary>A moment with its distance from Greenwich: <c>2026-05-04T09:00+02:00</c>.</summary>
internal static class DateShape
{
    private static readonly string[] Forms =
    [
        "yyyy-MM-dd'T'HH:mmK", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd HH:mmK", "yyyy-MM-dd HH:mm:ssK",
    ];

    public static Timestamp Read(string text) =>
        text.AsSpan(Math.Min(text.Length, "yyyy-MM-dd".Length)).ContainsAny('+', '-', 'Z')
        && DateTimeOffset.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? Timestamp.FromDateTimeOffset(time)
            : throw new FormatException($"\"{text}\" is not a moment; write date, time and distance from Greenwich, such as 2026-05-04T09:00+02:00.");

    public static string Write(Timestamp time) => time.ToDateTimeOffset().ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", CultureInfo.InvariantCulture);
}

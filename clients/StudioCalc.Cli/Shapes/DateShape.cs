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

    public static Timestamp Read(string text)
    {
        // Finer than a clock's tick of 100 ns.
        var dot = text.LastIndexOf('.');
        var fine = dot > 0 ? text[(dot + 1)..].TakeWhile(char.IsAsciiDigit).Count() : 0;
        var nanos = fine is 8 or 9 ? int.Parse(text.AsSpan(dot + 1, fine), NumberStyles.None, CultureInfo.InvariantCulture) * (fine == 8 ? 10 : 1) : 0;
        var coarse = fine is 8 or 9 ? text.Remove(dot, fine + 1) : text;
        if (coarse.AsSpan(Math.Min(coarse.Length, "yyyy-MM-dd".Length)).ContainsAny('+', '-', 'Z')
            && DateTimeOffset.TryParseExact(coarse, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            var read = Timestamp.FromDateTimeOffset(time);
            read.Nanos += nanos;
            return read;
        }

        throw new FormatException($"\"{text}\" is not a moment; write date, time and distance from Greenwich, such as 2026-05-04T09:00+02:00.");
    }

    public static string Write(Timestamp time)
    {
        var whole = new Timestamp { Seconds = time.Seconds }.ToDateTimeOffset().ToString("yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture);
        return time.Nanos == 0 ? whole + "Z" : string.Create(CultureInfo.InvariantCulture, $"{whole}.{time.Nanos:000000000}").TrimEnd('0') + "Z";
    }
}

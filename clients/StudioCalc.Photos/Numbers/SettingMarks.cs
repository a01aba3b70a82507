using System.Collections.Concurrent;
using System.Globalization;
using StudioCalc.Client;
using StudioCalc.V1;

namespace StudioCalc.Photos;

/// <summary>Tells marks from numbers. Cameras write the mark that they show: 5.6 stands for f/5.6, which is 4√2. A value that is
/// a mark neither on third nor on half stops, such as f/1.78 or 1/77 s, is meant as it stands.</summary>
internal sealed class SettingMarks(StudioCalcClient client)
{
    private const int MostKept = 4096;
    private const double Same = 0.002; // cameras write 1/30 s as 0.0333 s and its APEX form as 4.906

    private readonly ConcurrentDictionary<(string Text, StopScale Scale), ConvertMarkResponse?> _known = new();

    /// <summary>The scale of a camera's dials: half stops where the exposure time is a mark there alone, third stops otherwise. An
    /// f-number alone tells nothing: f/2.4 may be all that a lens has.</summary>
    public async Task<StopScale> ScaleOfAsync(double seconds, CancellationToken cancellation) =>
        await MarkAsync(TextsOfTime(seconds), StopScale.Third, cancellation).ConfigureAwait(false) is { Scale: StopScale.Half } ? StopScale.Half : StopScale.Third;

    /// <summary>An aperture, with the mark as it is answered on its own scale; none where it is no mark.</summary>
    public async Task<(Aperture Aperture, ApertureAnswer? Mark)> OfFNumberAsync(double fNumber, StopScale likely, CancellationToken cancellation) =>
        await MarkAsync(TextsOfFNumber(fNumber), likely, cancellation).ConfigureAwait(false) is { } mark
            ? (mark.Request.Aperture.Clone(), mark.Response.Apertures.First(answer => answer.Scale == mark.Scale).Clone())
            : (new() { FNumber = fNumber }, null);

    /// <summary>A shutter speed, with the mark as it is answered on its own scale; none where it is no mark.</summary>
    public async Task<(ShutterSpeed ShutterSpeed, ShutterSpeedAnswer? Mark)> OfTimeAsync(double seconds, StopScale likely, CancellationToken cancellation) =>
        await MarkAsync(TextsOfTime(seconds), likely, cancellation).ConfigureAwait(false) is { } mark
            ? (mark.Request.ShutterSpeed.Clone(), mark.Response.ShutterSpeeds.First(answer => answer.Scale == mark.Scale).Clone())
            : (new() { TimeS = seconds }, null);

    /// <summary>An ISO.</summary>
    public async Task<Iso> OfIsoAsync(double iso, CancellationToken cancellation) =>
        await MarkAsync(TextsOfIso(iso), StopScale.Third, cancellation).ConfigureAwait(false) is { } mark
            ? mark.Request.Iso.Clone()
            : new() { Speed = iso };

    private static IEnumerable<(string Key, Func<StopScale, ConvertMarkRequest> Request)> TextsOfFNumber(double fNumber)
    {
        var text = fNumber.ToString("0.##", CultureInfo.InvariantCulture);
        if (IsSame(text, fNumber))
        {
            yield return ("f/" + text, scale => new() { Aperture = new() { Mark = "f/" + text, Scale = scale } });
        }
    }

    private static IEnumerable<(string Key, Func<StopScale, ConvertMarkRequest> Request)> TextsOfTime(double seconds)
    {
        var plain = seconds.ToString("0.#", CultureInfo.InvariantCulture);
        if (IsSame(plain, seconds))
        {
            yield return (plain + " s", scale => new() { ShutterSpeed = new() { Mark = plain, Scale = scale } });
        }

        var under = (1 / seconds).ToString("0.#", CultureInfo.InvariantCulture);
        if (seconds < 1 && IsSame(under, 1 / seconds))
        {
            yield return ($"1/{under} s", scale => new() { ShutterSpeed = new() { Mark = "1/" + under, Scale = scale } });
        }
    }

    private static IEnumerable<(string Key, Func<StopScale, ConvertMarkRequest> Request)> TextsOfIso(double iso)
    {
        var text = iso.ToString("0.##", CultureInfo.InvariantCulture);
        if (IsSame(text, iso))
        {
            yield return ("ISO " + text, scale => new() { Iso = new() { Mark = text, Scale = scale } });
        }
    }

    private static bool IsSame(string text, double value) => Math.Abs(double.Parse(text, CultureInfo.InvariantCulture) - value) <= Same * value;

    private async Task<(ConvertMarkRequest Request, ConvertMarkResponse Response, StopScale Scale)?> MarkAsync(
        IEnumerable<(string Key, Func<StopScale, ConvertMarkRequest> Request)> texts, StopScale likely, CancellationToken cancellation)
    {
        var written = texts.ToList();
        foreach (var scale in new[] { likely, likely == StopScale.Third ? StopScale.Half : StopScale.Third })
        {
            foreach (var (key, request) in written)
            {
                if (await ConvertAsync((key, scale), request(scale), cancellation).ConfigureAwait(false) is { } response)
                {
                    return (request(scale), response, scale);
                }
            }
        }

        return null;
    }

    private async Task<ConvertMarkResponse?> ConvertAsync((string, StopScale) key, ConvertMarkRequest request, CancellationToken cancellation)
    {
        if (_known.TryGetValue(key, out var known))
        {
            return known;
        }

        try
        {
            known = await client.Exposure.ConvertMarkAsync(request, cancellation).ConfigureAwait(false);
        }
        catch (InvalidRequestException)
        {
            known = null;
        }

        if (_known.Count < MostKept)
        {
            _known.TryAdd(key, known);
        }

        return known;
    }
}

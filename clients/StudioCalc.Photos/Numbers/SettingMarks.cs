using System.Collections.Concurrent;
using System.Globalization;
using StudioCalc.Client;
using StudioCalc.V1;

namespace StudioCalc.Photos;

/// <summary>Tells marks from numbers. Cameras write the mark that they show: 5.6 stands for f/5.6, which is 4√2. A value that is
/// no mark, such as f/1.78 or 1/77 s, is meant as it stands.</summary>
internal sealed class SettingMarks(StudioCalcClient client)
{
    private const int MostKept = 4096;
    private const double Same = 0.002; // cameras write 1/30 s as 0.0333 s and its APEX form as 4.906

    private readonly ConcurrentDictionary<string, bool> _known = new(StringComparer.Ordinal);

    public async Task<Aperture> OfFNumberAsync(double fNumber, CancellationToken cancellation)
    {
        var text = fNumber.ToString("0.##", CultureInfo.InvariantCulture);
        return IsSame(text, fNumber) && await IsMarkAsync("f/" + text, new() { Aperture = Aperture.At("f/" + text) }, cancellation).ConfigureAwait(false)
            ? Aperture.At("f/" + text)
            : new() { FNumber = fNumber };
    }

    public async Task<ShutterSpeed> OfTimeAsync(double seconds, CancellationToken cancellation)
    {
        foreach (var text in TextsOf(seconds))
        {
            if (await IsMarkAsync(text + " s", new() { ShutterSpeed = ShutterSpeed.At(text) }, cancellation).ConfigureAwait(false))
            {
                return ShutterSpeed.At(text);
            }
        }

        return new() { TimeS = seconds };
    }

    public async Task<Iso> OfIsoAsync(double iso, CancellationToken cancellation)
    {
        var text = iso.ToString("0.##", CultureInfo.InvariantCulture);
        return IsSame(text, iso) && await IsMarkAsync("ISO " + text, new() { Iso = Iso.At(text) }, cancellation).ConfigureAwait(false)
            ? Iso.At(text)
            : new() { Speed = iso };
    }

    private static IEnumerable<string> TextsOf(double seconds)
    {
        var plain = seconds.ToString("0.#", CultureInfo.InvariantCulture);
        if (IsSame(plain, seconds))
        {
            yield return plain;
        }

        var under = (1 / seconds).ToString("0.#", CultureInfo.InvariantCulture);
        if (seconds < 1 && IsSame(under, 1 / seconds))
        {
            yield return "1/" + under;
        }
    }

    private static bool IsSame(string text, double value) => Math.Abs(double.Parse(text, CultureInfo.InvariantCulture) - value) <= Same * value;

    private async Task<bool> IsMarkAsync(string key, ConvertMarkRequest request, CancellationToken cancellation)
    {
        if (_known.TryGetValue(key, out var known))
        {
            return known;
        }

        try
        {
            await client.Exposure.ConvertMarkAsync(request, cancellation).ConfigureAwait(false);
            known = true;
        }
        catch (InvalidRequestException)
        {
            known = false;
        }

        if (_known.Count < MostKept)
        {
            _known.TryAdd(key, known);
        }

        return known;
    }
}

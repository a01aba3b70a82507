using System.Diagnostics;
using System.Globalization;

namespace StudioCalc.Cli;

/// <summary>Counts photos before the eyes of a person, a few times a second, and clears its line in the end.</summary>
internal sealed class PhotoProgress(bool isShown, TextWriter errors) : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);

    private readonly Stopwatch _sinceShown = Stopwatch.StartNew();
    private int _count;
    private int _width;

    public void Step()
    {
        _count++;
        if (isShown && _sinceShown.Elapsed >= Pause)
        {
            _sinceShown.Restart();
            var text = string.Create(CultureInfo.InvariantCulture, $"{_count} photos");
            _width = text.Length;
            errors.Write("\r" + text);
        }
    }

    public void Dispose()
    {
        if (_width > 0)
        {
            errors.Write($"\r{new string(' ', _width)}\r");
        }
    }
}

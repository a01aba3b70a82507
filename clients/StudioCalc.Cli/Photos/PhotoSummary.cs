using System.Globalization;
using StudioCalc.Photos;

namespace StudioCalc.Cli;

/// <summary>Counts what could not be read, worked out or written, by code.</summary>
internal sealed class PhotoSummary
{
    private readonly Dictionary<string, (int Count, PhotoNote First, string Photo)> _codes = new(StringComparer.Ordinal);
    private readonly Dictionary<SidecarOutcome, int> _sidecars = [];
    private int _photos;
    private int _unread;

    /// <summary>Whether every photo was read and every sidecar is there.</summary>
    public bool IsWhole => _unread == 0 && !_sidecars.ContainsKey(SidecarOutcome.Refused);

    public void Add(PhotoAnswer answer, SidecarResult? sidecar = null)
    {
        _photos++;
        _unread += answer.IsRead ? 0 : 1;
        foreach (var note in answer.Notes.DistinctBy(note => note.Code))
        {
            Count(note, answer.Photo.Name);
        }

        if (sidecar is not null)
        {
            _sidecars[sidecar.Outcome] = _sidecars.GetValueOrDefault(sidecar.Outcome) + 1;
            if (sidecar.Note is { } refused)
            {
                Count(refused, answer.Photo.Name);
            }
        }
    }

    /// <summary>Counts one photo that was left out.</summary>
    public void Leave(string photo, PhotoNote note)
    {
        _photos++;
        _unread += note.IsUnread ? 1 : 0;
        Count(note, photo);
    }

    /// <summary>Counts one photo that was read and counts.</summary>
    public void Take() => _photos++;

    public void Write(TextWriter errors)
    {
        errors.WriteLine(Text($"{Words.Count(_photos, "photo")}, {(_unread == 0 ? "all read" : Text($"{_unread} not read"))}"));
        if (_sidecars.Count > 0)
        {
            errors.WriteLine("sidecars: " + string.Join(", ", _sidecars.OrderBy(entry => entry.Key).Select(entry => Text($"{entry.Value} {(entry.Key == SidecarOutcome.None ? "not needed" : entry.Key.ToString().ToLowerInvariant())}"))));
        }

        foreach (var (code, (count, first, photo)) in _codes.OrderByDescending(entry => entry.Value.First.IsUnread).ThenByDescending(entry => entry.Value.Count).ThenBy(entry => entry.Key, StringComparer.Ordinal))
        {
            errors.WriteLine(Text($"{count,6}  {code,-44}  such as {photo}: {first.Text}"));
        }
    }

    private void Count(PhotoNote note, string photo) =>
        _codes[note.Code] = _codes.TryGetValue(note.Code, out var known) ? (known.Count + 1, known.First, known.Photo) : (1, note, photo);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using System.Text;

namespace StudioCalc.Planning;

/// <summary>Lines of at most 75 octets: longer ones go on after a break and a space, never within a character. RFC 5545, section 3.1.</summary>
internal sealed class FoldedLines
{
    private const int MostOctets = 75;
    private const string Break = "\r\n";

    private readonly StringBuilder _text = new();

    public void Add(string line)
    {
        var octets = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            if (octets + rune.Utf8SequenceLength > MostOctets)
            {
                _text.Append(Break).Append(' ');
                octets = 1;
            }

            _text.Append(rune);
            octets += rune.Utf8SequenceLength;
        }

        _text.Append(Break);
    }

    public override string ToString() => _text.ToString();
}

namespace StudioCalc.Maths;

/// <summary>A mark: a rounded text that stands for an exact value of a geometric series.</summary>
/// <param name="Text">The text as engraved or shown, such as <c>5.6</c>, without <c>f/</c> or unit.</param>
/// <param name="Tenths">Tenths of a stop added to the text, from 0 to 9; other than 0 on the tenth scale only.</param>
/// <param name="Scale">The scale on which it stands.</param>
/// <param name="Value">The exact value behind it: an f-number, seconds, or an ISO speed.</param>
public sealed record Mark(string Text, int Tenths, StopScale Scale, double Value);

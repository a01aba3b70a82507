namespace StudioCalc.Cli;

/// <summary>Where a command reads and writes.</summary>
/// <param name="Input">Standard input.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Errors">Standard error.</param>
/// <param name="Colour">Whether a person sees the output and wants it bold and coloured.</param>
/// <param name="ShowsProgress">Whether a person sees standard error.</param>
internal sealed record Terminal(TextReader Input, TextWriter Output, TextWriter Errors, bool Colour = false, bool ShowsProgress = false);

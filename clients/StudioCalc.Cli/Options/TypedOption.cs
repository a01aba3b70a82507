namespace StudioCalc.Cli;

/// <summary>An option as it was typed.</summary>
/// <param name="Spec">Which.</param>
/// <param name="Texts">Its values, in order.</param>
/// <param name="Times">How often it was given.</param>
internal sealed record TypedOption(OptionSpec Spec, IReadOnlyList<string> Texts, int Times = 1);

namespace StudioCalc.Cli;

/// <summary>What the texts of marks share.</summary>
internal static class MarkText
{
    /// <exception cref="FormatException">The text has a comma.</exception>
    public static void RefuseComma(string text)
    {
        if (text.Contains(',', StringComparison.Ordinal))
        {
            throw new FormatException($"\"{text}\" has a comma; write it with a point, such as 5.6.");
        }
    }

    /// <summary>The exact value, where the mark does not tell it to a hundredth of a stop.</summary>
    public static string Exact(double restStops, string value) => Math.Abs(restStops) < 0.005 ? "" : $" (exactly {value})";
}

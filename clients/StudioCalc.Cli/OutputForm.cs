namespace StudioCalc.Cli;

/// <summary>How an answer is printed.</summary>
internal enum OutputForm
{
    /// <summary>A table for people.</summary>
    Table,

    /// <summary>The contract's JSON.</summary>
    Json,

    /// <summary>The working, as a sum on paper.</summary>
    Working,
}

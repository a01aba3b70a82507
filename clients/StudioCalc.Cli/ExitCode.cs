namespace StudioCalc.Cli;

/// <summary>What the process tells its caller.</summary>
internal static class ExitCode
{
    /// <summary>The answer is there.</summary>
    public const int Reached = 0;

    /// <summary>Something failed that no other code names.</summary>
    public const int Failed = 1;

    /// <summary>The command line or the request file cannot be read.</summary>
    public const int Usage = 2;

    /// <summary>The answer says that what was asked for cannot be reached.</summary>
    public const int NotReached = 3;

    /// <summary>The service refuses the request.</summary>
    public const int Refused = 4;

    /// <summary>The server cannot be reached.</summary>
    public const int NoConnection = 5;

    /// <summary>The time for the call is over.</summary>
    public const int Deadline = 6;

    /// <summary>Some photos could not be read, their sidecars not written, or a list names photos that are not there.</summary>
    public const int Unread = 7;

    /// <summary>The person has stopped the call.</summary>
    public const int Cancelled = 130;

    /// <summary>The codes for the help text.</summary>
    public static IReadOnlyList<(int Code, string Meaning)> Meanings { get; } =
    [
        (Reached, "the answer is there, and what was asked for is reached"),
        (Failed, "something failed that no other code names"),
        (Usage, "the command line or the request file cannot be read"),
        (NotReached, "the answer says that what was asked for cannot be reached, by how much, and what would help"),
        (Refused, "the request is refused; each bad value is named"),
        (NoConnection, "the host cannot be reached"),
        (Deadline, "the time for the call is over"),
        (Unread, "photos not read, sidecars not written or listed photos not found; the summary tells why"),
        (Cancelled, "stopped by the person"),
    ];
}

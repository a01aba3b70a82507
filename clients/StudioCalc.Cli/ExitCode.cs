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

    /// <summary>The person has stopped the call.</summary>
    public const int Cancelled = 130;

    /// <summary>The codes for the help text.</summary>
    public const string Help = "Exit codes: 0 reached, 1 failed, 2 command line or file, 3 not reached, 4 refused, 5 no connection, 6 out of time, 130 stopped.";
}

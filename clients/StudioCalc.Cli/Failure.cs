using Grpc.Core;
using StudioCalc.Client;

namespace StudioCalc.Cli;

/// <summary>Tells a person what went wrong, and the caller of the process which kind it was.</summary>
internal static class Failure
{
    public static int Write(StudioCalcException error, string? server, OptionNames names, TextWriter errors)
    {
        if (error is InvalidRequestException invalid)
        {
            errors.WriteLine("The request is refused:");
            Write(invalid.Violations.Select(violation => (names.Of(violation.Field), names.Explain(violation.Field, violation.Description))), errors);
            return ExitCode.Refused;
        }

        return Code(error, server, errors);
    }

    /// <summary>Tells why there is no answer, and gives the code for it.</summary>
    public static int Code(StudioCalcException error, string? server, TextWriter errors)
    {
        errors.WriteLine(server is null ? error.Message : $"{server}: {error.Message}");
        if (error.Code == StatusCode.DeadlineExceeded)
        {
            errors.WriteLine("Give it more time with --deadline, such as --deadline \"30 s\".");
        }

        return error.Code switch
        {
            StatusCode.Unavailable => ExitCode.NoConnection,
            StatusCode.DeadlineExceeded => ExitCode.Deadline,
            StatusCode.ResourceExhausted or StatusCode.OutOfRange or StatusCode.Unauthenticated => ExitCode.Refused,
            _ => ExitCode.Failed,
        };
    }

    public static void Write(IEnumerable<(string Name, string Text)> fields, TextWriter errors, string indent = "  ")
    {
        foreach (var (name, text) in fields)
        {
            errors.WriteLine($"{indent}{name}: {text}");
        }
    }
}

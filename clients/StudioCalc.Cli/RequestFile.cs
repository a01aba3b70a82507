using System.Text;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>Reads a request from a JSON file or standard input.</summary>
internal static class RequestFile
{
    private const string WorkingField = "include_working";

    /// <summary>Reads the request, or writes what is wrong with it.</summary>
    /// <param name="method">The call that it is for.</param>
    /// <param name="path">A file, <c>-</c> for standard input, or null for an empty request.</param>
    /// <param name="withWorking">Whether to ask for the working whatever the file says.</param>
    /// <param name="input">Standard input.</param>
    /// <param name="request">The request.</param>
    /// <param name="errors">Gets what is wrong.</param>
    /// <param name="code">The exit code for what is wrong.</param>
    public static bool TryRead(
        MethodDescriptor method, string? path, bool withWorking, TextReader input, out IMessage request, TextWriter errors, out int code)
    {
        request = method.InputType.Parser.ParseFrom(ByteString.Empty);
        code = path is null ? ExitCode.Reached : Fill(request, path, input, errors);
        if (code != ExitCode.Reached)
        {
            return false;
        }

        if (withWorking)
        {
            method.InputType.FindFieldByName(WorkingField)?.Accessor.SetValue(request, true);
        }

        return true;
    }

    private static int Fill(IMessage request, string path, TextReader input, TextWriter errors)
    {
        byte[] text;
        try
        {
            text = path == "-" ? Encoding.UTF8.GetBytes(input.ReadToEnd()) : File.ReadAllBytes(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            errors.WriteLine(error is FileNotFoundException or DirectoryNotFoundException
                ? $"--request: there is no file {path}."
                : $"--request: cannot read {path}: {error.Message}");
            return ExitCode.Usage;
        }

        var violations = new Violations();
        ContractJson.Read(request, text, violations);
        if (violations.Any)
        {
            errors.WriteLine($"{(path == "-" ? "Standard input" : path)} is not a request of this call:");
            Failure.Write(violations.List.Select(violation => (violation.Field, violation.Description)), errors);
        }

        return violations.Any ? ExitCode.Refused : ExitCode.Reached;
    }
}

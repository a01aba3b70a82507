using System.Text;
using Google.Protobuf;
using StudioCalc.Client.Embedded;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>Reads a request from a JSON file or standard input.</summary>
internal static class RequestFile
{
    /// <summary>Fills a request, or writes what is wrong with the file.</summary>
    /// <param name="request">An empty request.</param>
    /// <param name="path">A file, or <c>-</c> for standard input.</param>
    /// <param name="names">Names the fields of the file.</param>
    /// <param name="terminal">Holds standard input, and gets what is wrong.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>The exit code.</returns>
    public static async Task<int> FillAsync(IMessage request, string path, OptionNames names, Terminal terminal, CancellationToken cancellation)
    {
        var limit = await LimitAsync(cancellation).ConfigureAwait(false);
        byte[] text;
        try
        {
            text = path == "-"
                ? Encoding.UTF8.GetBytes(await StartAsync(terminal.Input, limit + 1, cancellation).ConfigureAwait(false))
                : await StartAsync(path, limit + 1, cancellation).ConfigureAwait(false);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            await terminal.Errors.WriteLineAsync(error is FileNotFoundException or DirectoryNotFoundException
                ? $"--request: there is no file {path}; check the name, or write - for standard input."
                : $"--request: cannot read {path}: {error.Message}").ConfigureAwait(false);
            return ExitCode.Usage;
        }

        if (text.Length > limit)
        {
            await terminal.Errors.WriteLineAsync($"--request: more than {limit} bytes, which is all that a request may have; send less.").ConfigureAwait(false);
            return ExitCode.Refused;
        }

        var violations = new Violations();
        ContractJson.Read(request, WithoutMark(text), violations);
        if (violations.Any)
        {
            await terminal.Errors.WriteLineAsync($"{(path == "-" ? "Standard input" : path)} is not a request of this call:").ConfigureAwait(false);
            Failure.Write(violations.List.Select(violation => (names.Of(violation.Field), names.Explain(violation.Field, violation.Description))), terminal.Errors);
        }

        return violations.Any ? ExitCode.Refused : ExitCode.Reached;
    }

    private static async Task<int> LimitAsync(CancellationToken cancellation)
    {
        using var client = EmbeddedStudioCalc.Create();
        return (int)(await client.Capabilities.GetCapabilitiesAsync(new(), cancellation).ConfigureAwait(false)).Limits.MaxRequestBytes;
    }

    private static async Task<byte[]> StartAsync(string path, int most, CancellationToken cancellation)
    {
        using var file = File.OpenRead(path);
        var text = new byte[most];
        return text[..await file.ReadAtLeastAsync(text, most, throwOnEndOfStream: false, cancellation).ConfigureAwait(false)];
    }

    private static async Task<string> StartAsync(TextReader input, int most, CancellationToken cancellation)
    {
        var text = new char[most];
        return new(text, 0, await input.ReadBlockAsync(text.AsMemory(), cancellation).ConfigureAwait(false));
    }

    // Some editors put a byte order mark before the text.
    private static ReadOnlyMemory<byte> WithoutMark(byte[] text) =>
        text.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? text.AsMemory(Encoding.UTF8.Preamble.Length) : text;
}

using System.CommandLine;
using StudioCalc.Client;
using StudioCalc.Photos;

namespace StudioCalc.Cli;

/// <summary>Works out exposure, framing and depth of field of the photos in a folder.</summary>
internal sealed class EvaluatePhotosCommand
{
    private const string Table = "table";
    private const string Csv = "csv";
    private const string JsonLines = "json-lines";
    private const string Sidecars = "sidecars";

    private readonly Argument<string> _folder = PhotosCommand.Folder();
    private readonly PhotoAsk _ask = new();
    private readonly HostOptions _host = new();
    private readonly Terminal _terminal;

    private readonly Option<string> _output = BuiltIns.Choice(
        new("--output", "-o") { Description = "A table, comma-separated values, JSON objects line by line, or XMP sidecars beside the photos." },
        Table, Csv, JsonLines, Sidecars);

    private readonly Option<string?> _to = new("--to")
    {
        Description = "Writes into this file instead of the screen. It must not be there yet, and is whole or not there.",
        HelpName = "file",
    };

    private readonly Option<string> _sidecarName = BuiltIns.Choice(
        new("--sidecar-name") { Description = "photo.jpg.xmp, which no two photos share; or photo.xmp, refused for photos that would share it." },
        "full-name", "stem");

    private readonly Option<bool> _quiet = new("--quiet", "-q") { Description = "No progress and no summary." };

    public EvaluatePhotosCommand(Terminal terminal)
    {
        _terminal = terminal;
        Command = new("evaluate", "Evaluates exposure, framing and depth of field of each photo.") { _folder, _output, _to, _sidecarName };
        foreach (var option in _ask.All.Concat(_host.All).Append(_quiet))
        {
            Command.Add(option);
        }

        _ask.AddChecksTo(Command);
        _host.AddChecksTo(Command);
        Command.Validators.Add(result =>
        {
            if (result.GetValue(_to) is not null && result.GetValue(_output) == Sidecars)
            {
                result.AddError($"{_to.Name}: sidecars stand beside their photos; leave it out.");
            }

            if (result.GetValue(_to) is { } path && File.Exists(path))
            {
                result.AddError($"{_to.Name}: {path} is there already, and no file is written over; name another.");
            }
        });
        Command.SetAction(RunAsync);
    }

    public Command Command { get; }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var isQuiet = parsed.GetValue(_quiet);
        var form = parsed.GetValue(_output)!;
        var to = parsed.GetValue(_to);
        var summary = new PhotoSummary();
        try
        {
            using var client = _host.Connect(parsed);
            var answers = new PhotoEvaluator(client, _ask.Of(parsed)).EvaluateAsync(PhotoFolder.Files(parsed.GetValue(_folder)!), cancellation);
            using var file = to is null ? null : new WholeFile(to);
            using var progress = new PhotoProgress(_terminal.ShowsProgress && !isQuiet && (to is not null || form == Sidecars || Console.IsOutputRedirected), _terminal.Errors);
            var name = parsed.GetValue(_sidecarName) == "stem" ? SidecarName.Stem : SidecarName.FullName;
            await WriteAsync(answers, form, name, file?.Text ?? _terminal.Output, summary, progress).ConfigureAwait(false);
            cancellation.ThrowIfCancellationRequested();
            file?.Keep(replace: false);
        }
        catch (Exception error) when (error is FileNotFoundException or ArgumentException)
        {
            await _terminal.Errors.WriteLineAsync(error.Message).ConfigureAwait(false);
            return ExitCode.Usage;
        }
        catch (StudioCalcException error)
        {
            return Failure.Code(error, parsed.GetValue(_host.Server), _terminal.Errors);
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Cancelled;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            await _terminal.Errors.WriteLineAsync(error.Message).ConfigureAwait(false);
            return ExitCode.Failed;
        }

        if (!isQuiet)
        {
            summary.Write(_terminal.Errors);
        }

        return summary.IsWhole ? ExitCode.Reached : ExitCode.Unread;
    }

    private static async Task WriteAsync(
        IAsyncEnumerable<PhotoAnswer> answers, string form, SidecarName name, TextWriter output, PhotoSummary summary, PhotoProgress progress)
    {
        var header = form switch { Csv => PhotoCsv.Header, Table => PhotoTable.Header, _ => "" };
        await output.WriteAsync(header).ConfigureAwait(false);
        await foreach (var answer in answers.ConfigureAwait(false))
        {
            var result = form == Sidecars && answer.IsRead && answer.Photo.FullPath is not null ? XmpSidecar.Write(answer, name) : null;
            summary.Add(answer, result);
            progress.Step();
            var line = form switch
            {
                Csv => PhotoCsv.Line(answer),
                JsonLines => PhotoJson.Line(answer),
                Table => PhotoTable.Line(answer),
                _ => "",
            };
            await output.WriteAsync(line).ConfigureAwait(false);
        }

        await output.FlushAsync().ConfigureAwait(false);
    }
}

using System.CommandLine;
using System.Text;
using StudioCalc.Photos;

namespace StudioCalc.Cli;

/// <summary>Works out the pace of a past shoot from the times of its photos.</summary>
internal sealed class PhotoPaceCommand
{
    private readonly Argument<string> _folder = PhotosCommand.Folder();
    private readonly Terminal _terminal;

    private readonly Option<string> _output = BuiltIns.Choice(
        new("--output", "-o") { Description = "A table with the summary, the dishes as comma-separated values, or all as JSON." },
        "table", "csv", "json");

    private readonly Option<string?> _gap = new("--gap")
    {
        Description = "A rest of the camera after which the next frame is of the next dish. Unset means 10 min, which is common practice without a source.",
        HelpName = "time",
    };

    private readonly Option<string?> _break = new("--break")
    {
        Description = "A rest that counts as no part of the shoot. Unset means 3 h.",
        HelpName = "time",
    };

    private readonly Option<string?> _dishes = new("--dishes")
    {
        Description = "Comma-separated values that name the dishes, under file,dish or from,dish: by photo, or by the time from which each stood there.",
        HelpName = "file",
    };

    private readonly Option<string?> _kept = new("--kept")
    {
        Description = "The names of the kept photos, one a line, with or without folder and extension.",
        HelpName = "file",
    };

    private readonly Option<bool> _quiet = new("--quiet", "-q") { Description = "No progress and no summary of what was left out." };

    public PhotoPaceCommand(Terminal terminal)
    {
        _terminal = terminal;
        Command = new("pace", "Tells the pace of a past shoot: minutes and frames per dish, changeovers, dishes an hour.") { _folder, _output, _gap, _break, _dishes, _kept, _quiet };
        PhotoAsk.Check(_gap, text => TimeOf(text));
        PhotoAsk.Check(_break, text => TimeOf(text));
        Command.Validators.Add(result =>
        {
            if (result.GetValue(_gap) is not null && result.GetValue(_dishes) is not null)
            {
                result.AddError($"{_gap.Name}: cannot stand beside {_dishes.Name}, which tells dishes apart already.");
            }
        });
        Command.SetAction(RunAsync);
    }

    public Command Command { get; }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var summary = new PhotoSummary();
        bool isWhole;
        try
        {
            var options = new PaceOptions
            {
                Gap = parsed.GetValue(_gap) is { } gap ? TimeOf(gap) : PaceOptions.UsualGap,
                Break = parsed.GetValue(_break) is { } rest ? TimeOf(rest) : PaceOptions.UsualBreak,
                Dishes = await ReadAsync(_dishes, DishList.Read, cancellation).ConfigureAwait(false),
                Kept = await ReadAsync(_kept, text => new NameList(text.Split('\n')), cancellation).ConfigureAwait(false),
            };
            var pace = ShootPace.Of(Frames(parsed, summary, cancellation), options);
            isWhole = summary.IsWhole && pace is { KeptNamesUnmatched: null or 0, DishNamesUnmatched: null or 0 };
            await _terminal.Output.WriteAsync(parsed.GetValue(_output) switch
            {
                "csv" => PaceText.Csv(pace),
                "json" => PaceText.Json(pace),
                _ => PaceTable.Text(pace),
            }).ConfigureAwait(false);
            if (parsed.GetValue(_output) == "csv" && !parsed.GetValue(_quiet))
            {
                await _terminal.Errors.WriteAsync(PaceTable.Notes(pace)).ConfigureAwait(false);
            }
        }
        catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException or FormatException or DecoderFallbackException)
        {
            await _terminal.Errors.WriteLineAsync(error.Message).ConfigureAwait(false);
            return ExitCode.Usage;
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

        if (!parsed.GetValue(_quiet))
        {
            summary.Write(_terminal.Errors);
        }

        return isWhole ? ExitCode.Reached : ExitCode.Unread;

        async Task<T?> ReadAsync<T>(Option<string?> option, Func<string, T> read, CancellationToken stop)
            where T : class
        {
            if (parsed.GetValue(option) is not { } path)
            {
                return null;
            }

            try
            {
                return read(await File.ReadAllTextAsync(path, stop).ConfigureAwait(false));
            }
            catch (FormatException error)
            {
                throw new FormatException($"{option.Name}: {path}: {error.Message}", error);
            }
        }
    }

    private IEnumerable<PhotoFrame> Frames(ParseResult parsed, PhotoSummary summary, CancellationToken cancellation)
    {
        using var progress = new PhotoProgress(_terminal.ShowsProgress && !parsed.GetValue(_quiet), _terminal.Errors);
        var photos = PhotoFolder.Files(parsed.GetValue(_folder)!).Select(photo =>
        {
            cancellation.ThrowIfCancellationRequested();
            progress.Step();
            return photo;
        });
        foreach (var frame in PhotoFrame.Of(photos, (photo, note) => summary.Leave(photo.Name, note)))
        {
            summary.Take();
            yield return frame;
        }
    }

    private static TimeSpan TimeOf(string text) => TimeShape.Read(text).ToTimeSpan() is var time && time > TimeSpan.Zero && time <= TimeSpan.FromDays(366)
        ? time
        : throw new FormatException($"\"{text}\" is no rest of a camera; write a time above zero, such as \"10 min\".");
}

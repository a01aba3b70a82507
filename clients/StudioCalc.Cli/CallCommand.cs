using System.CommandLine;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Client;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>One call of the contract as a command.</summary>
internal sealed class CallCommand
{
    private readonly BuiltIns _builtIns;
    private readonly Lazy<CallOptions> _options;
    private readonly Terminal _terminal;

    public CallCommand(MethodDescriptor method, Mentions mentions, Terminal terminal)
    {
        (Method, _terminal) = (method, terminal);
        _builtIns = new(AnswerFiles.Of(method));
        _options = new(() => new(method, mentions));
        Command = new(Words.Kebab(Contract.VerbOf(method)), Words.Summary(ContractComments.Of(method)));
        _builtIns.AddTo(Command);

        // The options of all calls together take a tenth of a second to make.
        if (mentions.Has(Command.Name))
        {
            Options.AddTo(Command);
        }

        Command.SetAction(RunAsync);
    }

    public Command Command { get; }

    public MethodDescriptor Method { get; }

    public CallOptions Options => _options.Value;

    public IReadOnlyList<Option> BuiltIn => _builtIns.All;

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var server = parsed.GetValue(_builtIns.Host.Server);
        var file = parsed.GetValue(_builtIns.Request);
        var typed = Options.Typed(parsed);
        if (parsed.GetValue(_builtIns.Example))
        {
            await _terminal.Output.WriteLineAsync(Samples.TextOf(Method) ?? "{}").ConfigureAwait(false);
            return ExitCode.Reached;
        }

        if (file is null && typed.Count == 0 && Options.Tree.Count > 0)
        {
            await _terminal.Errors.WriteLineAsync("Nothing is asked yet: write the request as options, or give it with --request. Add --help to see both.")
                .ConfigureAwait(false);
            return ExitCode.Usage;
        }

        var request = Method.InputType.Parser.ParseFrom(ByteString.Empty);
        var names = new OptionNames(Method.InputType, new Dictionary<string, OptionSpec>(StringComparer.Ordinal), hasFile: true);
        try
        {
            if (file is not null && await RequestFile.FillAsync(request, file, names, _terminal, cancellation).ConfigureAwait(false) is var code and not ExitCode.Reached)
            {
                return code;
            }

            var told = new TypedRequest(request);
            told.Take(typed);
            if (told.Refusals.Count > 0)
            {
                Failure.Write(told.Refusals, _terminal.Errors, indent: "");
                return ExitCode.Usage;
            }

            names = new(Method.InputType, told.Told, hasFile: file is not null);
            return await AnswerAsync(parsed, request, names, cancellation).ConfigureAwait(false);
        }
        catch (StudioCalcException error)
        {
            return Failure.Write(error, server, names, _terminal.Errors);
        }
        catch (ArgumentException error)
        {
            await _terminal.Errors.WriteLineAsync($"--server: {error.Message}").ConfigureAwait(false);
            return ExitCode.Usage;
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Cancelled;
        }
        catch (IOException error)
        {
            await _terminal.Errors.WriteLineAsync(error.Message).ConfigureAwait(false);
            return ExitCode.Failed;
        }
    }

    private async Task<int> AnswerAsync(ParseResult parsed, IMessage request, OptionNames names, CancellationToken cancellation)
    {
        var form = Enum.Parse<OutputForm>(parsed.GetValue(_builtIns.Output)!, ignoreCase: true);
        if (form == OutputForm.Working)
        {
            WorkingText.AskFor(request);
        }

        using var client = _builtIns.Host.Connect(parsed);
        var answer = Method.IsServerStreaming
            ? await CallProgress.LastAsync(client.StreamAsync(Method, request, cancellation), _terminal).ConfigureAwait(false)
            : await client.CallAsync(Method, request, cancellation).ConfigureAwait(false);
        foreach (var (field, option) in _builtIns.Files)
        {
            if (parsed.GetValue(option) is { } path)
            {
                await AnswerFiles.SaveAsync(answer, field, path, cancellation).ConfigureAwait(false);
            }
        }

        if (!parsed.GetValue(_builtIns.Quiet))
        {
            Write(answer, form, parsed, names);
        }

        return Reached.By(answer) ? ExitCode.Reached : ExitCode.NotReached;
    }

    private void Write(IMessage answer, OutputForm form, ParseResult parsed, OptionNames names)
    {
        switch (form)
        {
            case OutputForm.Json:
                _terminal.Output.WriteLine(ContractJson.Write(answer, indented: true));
                break;
            case OutputForm.Working:
                WorkingText.Write(answer, _terminal.Output);
                break;
            case OutputForm.Table when AnswerFiles.TextOf(answer) is { } text:
                _terminal.Output.Write(text);
                break;
            default:
                AnswerTable.Write(
                    answer,
                    _terminal.Output,
                    names,
                    Enum.Parse<UnitSystem>(parsed.GetValue(_builtIns.Units)!, ignoreCase: true),
                    _terminal.Colour && !parsed.GetValue(_builtIns.NoColour));
                break;
        }
    }
}

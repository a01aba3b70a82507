using System.CommandLine;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.Client;
using StudioCalc.Client.Embedded;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>One call of the contract as a command.</summary>
internal sealed class CallCommand(MethodDescriptor method, TextReader input, TextWriter output, TextWriter errors)
{
    private const string KeyVariable = "STUDIOCALC_KEY";

    private readonly Option<string> _request = new("--request", "-r")
    {
        Description = "The request: a JSON file, or - for standard input.",
        HelpName = "file",
        Required = method.InputType.Fields.InFieldNumberOrder().Count > 0,
    };

    private readonly Option<string> _output = new("--output", "-o")
    {
        Description = "The answer as a table, as JSON, or with its working as a sum on paper.",
        HelpName = "table|json|working",
        DefaultValueFactory = _ => "table",
    };

    private readonly Option<string?> _server = new("--server", "-s")
    {
        Description = "Address of a host's gRPC port, such as http://127.0.0.1:8081. Without it the answer is worked out in this process.",
        HelpName = "address",
    };

    private readonly Option<string?> _key = new("--key")
    {
        Description = $"The key that the host asks for. The environment variable {KeyVariable} keeps it off the command line.",
        HelpName = "key",
    };

    public Command Build()
    {
        var command = new Command(Words.Kebab(Contract.VerbOf(method)), Words.Summary(ContractComments.Of(method)))
        {
            _request, _output, _server, _key,
        };
        _output.AcceptOnlyFromAmong("table", "json", "working");
        _server.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } address && AddressOf(address) is null)
            {
                result.AddError("--server: not an http or https address, such as http://127.0.0.1:8081.");
            }
        });
        command.Validators.Add(result =>
        {
            if (result.GetValue(_key) is not null && result.GetValue(_server) is null)
            {
                result.AddError("--key: goes with --server; in this process no key is needed.");
            }
        });
        command.SetAction(RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var form = Enum.Parse<OutputForm>(parsed.GetValue(_output)!, ignoreCase: true);
        try
        {
            if (!RequestFile.TryRead(
                method, parsed.GetValue(_request), form == OutputForm.Working, input, out var request, errors, out var code))
            {
                return code;
            }

            using var client = Connect(parsed);
            var answer = await client.CallAsync(method, request, cancellation).ConfigureAwait(false);
            Write(answer, form);
            return Reached.By(answer) ? ExitCode.Reached : ExitCode.NotReached;
        }
        catch (StudioCalcException error)
        {
            return Failure.Write(error, parsed.GetValue(_server), errors);
        }
        catch (ArgumentException error)
        {
            await errors.WriteLineAsync($"--server: {error.Message}").ConfigureAwait(false);
            return ExitCode.Usage;
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Cancelled;
        }
        catch (IOException error)
        {
            await errors.WriteLineAsync(error.Message).ConfigureAwait(false);
            return ExitCode.Failed;
        }
    }

    private StudioCalcClient Connect(ParseResult parsed) => parsed.GetValue(_server) is { } address
        ? StudioCalcClient.Connect(new StudioCalcClientOptions
        {
            Address = AddressOf(address),
            ApiKey = parsed.GetValue(_key) ?? Environment.GetEnvironmentVariable(KeyVariable),
        })
        : EmbeddedStudioCalc.Create();

    private static Uri? AddressOf(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is "http" or "https" ? address : null;

    private void Write(IMessage answer, OutputForm form)
    {
        switch (form)
        {
            case OutputForm.Json:
                output.WriteLine(ContractJson.Write(answer, indented: true));
                break;
            case OutputForm.Working:
                WorkingText.Write(answer, output);
                break;
            default:
                AnswerTable.Write(answer, output);
                break;
        }
    }
}

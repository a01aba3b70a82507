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
    private readonly Option<string> _request = new("--request", "-r")
    {
        Description = "The request: a JSON file, or - for standard input.",
        HelpName = "file",
        Required = method.InputType.Fields.InFieldNumberOrder().Count > 0,
    };

    private readonly Option<OutputForm> _output = new("--output", "-o")
    {
        Description = "The answer as a table, as JSON, or with its working as a sum on paper.",
        DefaultValueFactory = _ => OutputForm.Table,
    };

    private readonly Option<Uri?> _server = new("--server", "-s")
    {
        Description = "Address of a host, such as http://127.0.0.1:8081. Without it the answer is worked out in this process.",
        HelpName = "address",
    };

    private readonly Option<string?> _key = new("--key")
    {
        Description = "The key that the host asks for.",
        HelpName = "key",
    };

    public Command Build()
    {
        var command = new Command(Words.Kebab(Contract.VerbOf(method)), Words.Summary(ContractComments.Of(method)))
        {
            _request, _output, _server, _key,
        };
        command.SetAction(RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var form = parsed.GetValue(_output);
        if (!RequestFile.TryRead(method, parsed.GetValue(_request), form == OutputForm.Working, input, out var request, errors))
        {
            return ExitCode.Usage;
        }

        try
        {
            using var client = Connect(parsed);
            var answer = await client.CallAsync(method, request, cancellation).ConfigureAwait(false);
            Write(answer, form);
            return Reached.By(answer) ? ExitCode.Reached : ExitCode.NotReached;
        }
        catch (StudioCalcException error)
        {
            return Failure.Write(error, errors);
        }
    }

    private StudioCalcClient Connect(ParseResult parsed) => parsed.GetValue(_server) is { } address
        ? StudioCalcClient.Connect(new StudioCalcClientOptions { Address = address, ApiKey = parsed.GetValue(_key) })
        : EmbeddedStudioCalc.Create();

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

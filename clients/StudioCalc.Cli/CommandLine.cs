using System.CommandLine;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>The command line: a command for every subject of the contract, and under it one for every call.</summary>
internal sealed class CommandLine(TextReader input, TextWriter output, TextWriter errors)
{
    public async Task<int> RunAsync(string[] args)
    {
        var parsed = Root().Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
            {
                await errors.WriteLineAsync(error.Message).ConfigureAwait(false);
            }

            await errors.WriteLineAsync("Add --help to see what is allowed.").ConfigureAwait(false);
            return ExitCode.Usage;
        }

        return await parsed
            .InvokeAsync(new() { Output = output, Error = errors, EnableDefaultExceptionHandler = false })
            .ConfigureAwait(false);
    }

    private RootCommand Root()
    {
        var root = new RootCommand("Numbers for a food photography studio: exposure, lighting ratio and more, from a request in JSON. " + ExitCode.Help);
        foreach (var service in Contract.Services)
        {
            var subject = new Command(Words.Kebab(Contract.SubjectOf(service)), Words.Summary(ContractComments.Of(service)));
            foreach (var method in service.Methods)
            {
                subject.Add(new CallCommand(method, input, output, errors).Build());
            }

            root.Add(subject);
        }

        return root;
    }
}

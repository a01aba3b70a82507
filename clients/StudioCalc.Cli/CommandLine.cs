using System.CommandLine;
using System.CommandLine.Help;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>The command line: a command for every subject of the contract, and under it one for every call.</summary>
internal sealed class CommandLine(Terminal terminal)
{
    private static readonly ParserConfiguration Plain = new() { EnablePosixBundling = false, ResponseFileTokenReplacer = null };

    public async Task<int> RunAsync(string[] args)
    {
        var calls = Calls(args);
        var parsed = Root(calls).Parse(args, Plain);
        var call = calls.FirstOrDefault(call => call.Command == parsed.CommandResult.Command);
        var complaints = parsed.Errors.Count > 0 || call is not null && parsed.Action is not HelpPages ? Complaints.About(args, parsed, call?.Options) : [];
        if (complaints.Count > 0)
        {
            foreach (var complaint in complaints)
            {
                await terminal.Errors.WriteLineAsync(complaint).ConfigureAwait(false);
            }

            await terminal.Errors.WriteLineAsync("Add --help to see what is allowed.").ConfigureAwait(false);
            return ExitCode.Usage;
        }

        return await parsed
            .InvokeAsync(new() { Output = terminal.Output, Error = terminal.Errors, EnableDefaultExceptionHandler = false })
            .ConfigureAwait(false);
    }

    private List<CallCommand> Calls(string[] args)
    {
        var mentions = new Mentions(args);
        return [.. from service in Contract.Services from method in service.Methods select new CallCommand(method, mentions, terminal)];
    }

    private RootCommand Root(List<CallCommand> calls)
    {
        var root = new RootCommand("Numbers for a food photography studio: exposure, lighting ratio and more.");
        foreach (var service in Contract.Services)
        {
            var subject = new Command(Words.Kebab(Contract.SubjectOf(service)), Words.Summary(ContractComments.Of(service)));
            foreach (var call in calls.Where(call => call.Method.Service == service))
            {
                subject.Add(call.Command);
            }

            root.Add(subject);
        }

        root.Add(PhotosCommand.Of(terminal));
        root.Add(CompletionScripts.Command(terminal.Output));
        root.Options.OfType<HelpOption>().Single().Action = new HelpPages(calls, terminal);
        return root;
    }
}

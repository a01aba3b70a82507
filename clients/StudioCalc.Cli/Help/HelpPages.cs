using System.CommandLine;
using System.CommandLine.Invocation;

namespace StudioCalc.Cli;

/// <summary>Shows the help page of the command that was asked about.</summary>
internal sealed class HelpPages(IReadOnlyList<CallCommand> calls, Terminal terminal) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var command = parseResult.CommandResult.Command;
        var page = new Page(terminal.Output, terminal.Colour && parseResult.Tokens.All(token => token.Value != "--no-colour"));
        if (calls.FirstOrDefault(call => call.Command == command) is { } call)
        {
            CallHelp.Write(call, page);
        }
        else if (command is RootCommand)
        {
            RootHelp.Write(command, calls, page);
        }
        else if (command.Options.Count > 0)
        {
            CommandHelp.Write(command, page);
        }
        else
        {
            SubjectHelp.Write(command, page);
        }

        return ExitCode.Reached;
    }
}

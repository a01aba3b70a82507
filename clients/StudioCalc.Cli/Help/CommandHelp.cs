using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>The help page of a command that is no call of the contract: its arguments and options.</summary>
internal static class CommandHelp
{
    public static void Write(Command command, Page page)
    {
        page.Text(command.Description ?? "");
        page.Heading("Usage");
        var path = string.Join(' ', command.Parents.OfType<Command>().Reverse().Append(command).Select(part => part is RootCommand ? "studiocalc" : part.Name));
        page.Line($"  {path}{string.Concat(command.Arguments.Select(argument => $" <{argument.Name}>"))} [options]");
        foreach (var argument in command.Arguments)
        {
            page.Term($"<{argument.Name}>", argument.Description ?? "", 36);
        }

        page.Heading("Options");
        foreach (var option in command.Options)
        {
            var names = string.Join(", ", option.Aliases.Prepend(option.Name));
            page.Term(option.HelpName is { } value ? $"{names} {value}" : names, option.Description ?? "", 36);
        }
    }
}

using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>The help page of a command that is no call of the contract: its arguments and options.</summary>
internal static class CommandHelp
{
    public static void Write(Command command, Page page)
    {
        page.Text(command.Description ?? "");
        page.Heading("Usage");
        page.Line($"  {PathOf(command)}{string.Concat(command.Arguments.Select(argument => $" <{argument.Name}>"))} [options]");
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

    private static string PathOf(Command command) =>
        command is RootCommand ? "studiocalc" : $"{PathOf(command.Parents.OfType<Command>().First())} {command.Name}";
}

using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>The help page of a subject: its calls.</summary>
internal static class SubjectHelp
{
    public static void Write(Command subject, Page page)
    {
        page.Text(subject.Description ?? "");
        page.Heading("Commands");
        Commands(subject, page);
        page.Line();
        page.Text($"studiocalc {subject.Name} <command> --help tells the rest.");
    }

    /// <summary>The commands under a subject, a line each.</summary>
    public static void Commands(Command subject, Page page)
    {
        foreach (var command in subject.Subcommands)
        {
            page.Term($"{subject.Name} {command.Name}", command.Description ?? "", 42);
        }
    }
}

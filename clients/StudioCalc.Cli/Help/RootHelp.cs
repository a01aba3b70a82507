using System.CommandLine;

namespace StudioCalc.Cli;

/// <summary>The first help page: what there is, how to ask for it, and a whole example.</summary>
internal static class RootHelp
{
    private const string First = "balance-fill";

    public static void Write(Command root, IReadOnlyList<CallCommand> calls, Page page)
    {
        page.Text(root.Description ?? "");
        page.Heading("Usage");
        page.Line("  studiocalc <subject> <command> [options]");
        page.Line("  studiocalc <subject> <command> --help     what one command asks and answers");
        page.Line("  studiocalc --version");

        page.Heading("Commands");
        foreach (var subject in root.Subcommands)
        {
            page.Text(subject.Description ?? "", 2);
            SubjectHelp.Commands(subject, page);
            page.Line();
        }

        Example(calls, page);
        Request(page);
        BuiltInOptions(calls[0], page);

        page.Heading("Exit codes");
        foreach (var (code, meaning) in ExitCode.Meanings)
        {
            page.Term($"{code,3}", meaning, 9);
        }
    }

    /// <summary>The options that every call has.</summary>
    public static void BuiltInOptions(CallCommand call, Page page)
    {
        page.Heading("Options of every command");
        foreach (var option in call.BuiltIn)
        {
            var names = string.Join(", ", option.Aliases.Prepend(option.Name));
            page.Term(option.HelpName is { } value ? $"{names} {value}" : names, option.Description ?? "", 36);
        }
    }

    private static void Example(IReadOnlyList<CallCommand> calls, Page page)
    {
        var call = calls.First(call => call.Command.Name == First);
        page.Heading("Example");
        page.Text(
            "A window behind the plate meters f/8 at 1/125 s and ISO 100; the flash in front, at 1/8 power, meters f/5.6. "
            + "The window is to stand two stops over the fill, and the fill one stop under the setting.",
            2);
        page.Line();
        CallHelp.Example(call, page);
    }

    private static void Request(Page page)
    {
        page.Heading("What is asked");
        page.Text(
            "Each value of a request is an option, named by its path: --camera.sync-speed, --fill.power. Items of a list are counted "
            + "from 0: --lights.0.name, --lights.1.name. A list of plain values repeats its option. The same request may come as "
            + "JSON with --request; options then go over the file.",
            2);
        page.Line();
        page.Text("A value that has a unit is written with it; between quotes, because of the gap. The units are:", 2);
        foreach (var kind in UnitSuffix.Kinds)
        {
            page.Term(kind.Name, kind.Choice, 26);
        }

        page.Line();
        page.Text(
            "Numbers have a point, never a comma, in every country: \"1.2 m\". Fractions are numbers too: \"1/125 s\", \"-1/3 stop\". "
            + "Feet and inches, and hours, minutes and seconds, may follow one another: \"5 ft 7 in\", \"2 min 30 s\".",
            2);
        page.Line();
        page.Text("Settings are written as they are read off the camera, the meter and the flash:", 2);
        page.Term("aperture", "f/5.6 or 5.6; \"f/5.6 7/10\" with the tenths of a meter", 26);
        page.Term("shutter speed", "1/125, 0.5 or \"30 s\"", 26);
        page.Term("ISO", "100, \"ISO 100\", \"ISO 100/21°\" or 21°", 26);
        page.Term("flash power", "1/8; \"1/8 +0.3\" with stops added", 26);
        page.Text("These are marks: f/5.6 stands for 4√2. Behind a dot they take other forms, such as --aperture.f-number 5.6.", 2);
    }
}

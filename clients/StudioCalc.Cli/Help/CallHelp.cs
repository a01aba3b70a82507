using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Cli;

/// <summary>The help page of a call: what it does, an example that runs, and every option with what the contract says of it.</summary>
internal static class CallHelp
{
    private const int Column = 8;

    public static void Write(CallCommand call, Page page)
    {
        page.Text(Words.WithoutCodes(ContractComments.Of(call.Method)));
        page.Heading("Usage");
        page.Line($"  {NameOf(call)} [options]");
        if (Samples.TextOf(call.Method) is not null)
        {
            page.Heading("Example");
            Example(call, page);
        }

        var shapes = new List<MessageDescriptor>();
        foreach (var spec in call.Options.Tree)
        {
            page.Heading(Words.Sentence(Words.Label(spec.Field)));
            Option(spec, page, shapes);
        }

        Shapes(shapes, page);
        RootHelp.BuiltInOptions(call, page);
        page.Line();
        page.Text("Units, exit codes and how values are written: studiocalc --help.");
    }

    /// <summary>The sample request as a command.</summary>
    public static void Example(CallCommand call, Page page)
    {
        foreach (var line in ShellText.Lines(NameOf(call), RequestWriter.Write(Samples.Of(call.Method)!)))
        {
            page.Line("  " + line);
        }
    }

    private static string NameOf(CallCommand call) => $"studiocalc {Words.Kebab(Contract.SubjectOf(call.Method.Service))} {call.Command.Name}";

    private static void Option(OptionSpec spec, Page page, List<MessageDescriptor> shapes)
    {
        page.Term(spec.IsTyped ? $"{spec.Name} {HelpForm.Of(spec)}".TrimEnd() : spec.Name + ".*", Meaning(spec), Column);
        if (spec.Kind == OptionKind.Shape)
        {
            if (!shapes.Contains(spec.Field.MessageType))
            {
                shapes.Add(spec.Field.MessageType);
            }

            return;
        }

        foreach (var part in spec.Parts)
        {
            Option(part, page, shapes);
        }
    }

    private static string Meaning(OptionSpec spec)
    {
        var parent = spec.Parent?.Name ?? "";
        var comment = OptionNames.Rename(
            ContractComments.Of(spec.Field),
            name => spec.Field.ContainingType.FindFieldByName(name) is { } field ? OptionTree.NameOf(parent, field) : null);
        var isMarked = comment.StartsWith("Required.", StringComparison.Ordinal) || comment.StartsWith("Optional.", StringComparison.Ordinal);
        return string.Concat(
            spec.Choice is { } choice ? $"One of {Words.Or([.. choice.Fields.Select(field => UnitSuffix.NameWithout(field).Replace('_', '-'))])}. "
                : isMarked ? "" : "Optional. ",
            comment,
            UnitSuffix.Of(spec.Field) is { } suffix && suffix.Kind.Units.Length > 1 ? $" Figures here are in {suffix.Shown}." : "",
            spec.Kind == OptionKind.List ? " Repeat the option for each." : "",
            spec.Index is not null ? " A list: 0 is its first item, 1 the next." : "");
    }

    private static void Shapes(List<MessageDescriptor> shapes, Page page)
    {
        if (shapes.Count == 0)
        {
            return;
        }

        page.Heading("Other forms");
        page.Text("Instead of the short text, or beside it, these go behind the option's name and a dot.", 2);
        foreach (var message in shapes)
        {
            page.Line();
            page.Text($"{Words.Sentence(Words.Type(message))}, such as {Shape.Of(message)!.Form}:", 2);
            foreach (var field in message.Fields.InFieldNumberOrder())
            {
                var spec = new OptionSpec(OptionTree.NameOf("", field), field.Name, field, null, null);
                page.Term($".{spec.Name.TrimStart('-')} {HelpForm.Of(spec)}", Meaning(spec), Column);
            }
        }
    }
}

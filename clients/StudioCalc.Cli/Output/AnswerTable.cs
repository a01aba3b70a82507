using System.Collections;
using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Spectre.Console;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>Prints an answer as a table, told by the contract: labels from field names, units from their suffixes.</summary>
internal sealed class AnswerTable
{
    private const int Step = 2;
    private const int Width = 110;
    private const string Remedies = "remedies";

    private static readonly Style Heading = new(decoration: Decoration.Bold);
    private static readonly Style Careful = new(Color.Yellow, decoration: Decoration.Bold);

    private readonly Grid _grid = new Grid().AddColumn(new GridColumn().NoWrap().PadRight(2)).AddColumn();
    private readonly CellText _cells;

    private readonly OptionNames _names;

    private AnswerTable(UnitSystem system, OptionNames names) => (_cells, _names) = (new(system), names);

    /// <summary>Prints an answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="output">Where to.</param>
    /// <param name="names">Names the request's fields that advisories are about.</param>
    /// <param name="system">How lengths and temperatures are shown.</param>
    /// <param name="colour">Whether headings and cautions stand out.</param>
    public static void Write(IMessage answer, TextWriter output, OptionNames names, UnitSystem system, bool colour)
    {
        var table = new AnswerTable(system, names);
        table.Message(answer, 0);
        using var text = new StringWriter();
        var console = AnsiConsole.Create(new()
        {
            Ansi = colour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = colour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Out = new AnsiConsoleOutput(text),
        });
        console.Profile.Width = Width;
        console.Write(table._grid);
        foreach (var line in text.ToString().Split('\n').SkipLast(1))
        {
            output.WriteLine(line.TrimEnd());
        }
    }

    private void Message(IMessage message, int indent, FieldDescriptor? told = null)
    {
        foreach (var (field, value) in CellText.Fields(message).Where(shown => shown.Field != told))
        {
            switch (value)
            {
                case IEnumerable<WorkingStep>:
                    break;
                case IEnumerable<Advisory> advisories:
                    Advisories(advisories, indent);
                    break;
                case IList list:
                    List(field, list, indent);
                    break;
                default:
                    Field(field, value, indent);
                    break;
            }
        }
    }

    private void Field(FieldDescriptor field, object value, int indent)
    {
        var label = Words.Sentence(Words.Label(field));
        switch (value)
        {
            case IMessage document when AnswerFiles.Show(field, document) is { } file:
                Row(indent, label, file);
                break;
            case IMessage message when ShortForms.Of(message) is { } text:
                Row(indent, label, text);
                break;
            case IMessage message:
                Row(indent, label, "", Heading);
                Message(message, indent + Step);
                break;
            default:
                Row(indent, label, _cells.Scalar(field, value));
                break;
        }
    }

    private void List(FieldDescriptor field, IList list, int indent)
    {
        if (field.FieldType != FieldType.Message)
        {
            Row(indent, Words.Sentence(Words.Label(field)), string.Join(", ", list.Cast<object>().Select(item => _cells.Scalar(field, item))));
            return;
        }

        var number = 0;
        foreach (IMessage item in list)
        {
            var heading = $"{Words.Sentence(Words.Singular(Words.Label(field)))} {++number}";
            if (field.Name == Remedies)
            {
                Row(indent, heading, _cells.OneLine(item));
                continue;
            }

            _grid.AddEmptyRow();
            var kind = Kind(item);
            Row(indent, kind is null ? heading : $"{heading}: {_cells.Scalar(kind, kind.Accessor.GetValue(item))}", "", Heading);
            Message(item, indent + Step, kind);
        }
    }

    // The field that tells what an item is, where its first one is an enum.
    private static FieldDescriptor? Kind(IMessage item) =>
        item.Descriptor.FindFieldByNumber(1) is { FieldType: FieldType.Enum, IsRepeated: false } kind ? kind : null;

    private void Advisories(IEnumerable<Advisory> advisories, int indent)
    {
        foreach (var advisory in advisories)
        {
            Row(indent, Words.Sentence(_cells.Scalar(Advisory.Descriptor.FindFieldByNumber(Advisory.SeverityFieldNumber), advisory.Severity)),
                advisory.Field.Length == 0 ? advisory.Text : $"{_names.Of(advisory.Field)}: {advisory.Text}",
                advisory.Severity == AdvisorySeverity.Caution ? Careful : Style.Plain);
        }
    }

    private void Row(int indent, string label, string text, Style? style = null) =>
        _grid.AddRow(new Text(new string(' ', indent) + label, style), new Text(text, style));
}

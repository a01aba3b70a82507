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

    private readonly Grid _grid = new Grid().AddColumn(new GridColumn().NoWrap().PadRight(2)).AddColumn();

    public static void Write(IMessage answer, TextWriter output)
    {
        var table = new AnswerTable();
        table.Message(answer, 0);
        using var text = new StringWriter();
        var console = AnsiConsole.Create(new()
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
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
        foreach (var field in message.Descriptor.Fields.InFieldNumberOrder().Where(field => field != told))
        {
            var value = field.Accessor.GetValue(message);
            if (value is null || (field.HasPresence && !field.Accessor.HasValue(message)) || value is IEnumerable<WorkingStep>)
            {
                continue;
            }

            if (value is IEnumerable<Advisory> advisories)
            {
                Advisories(advisories, indent);
            }
            else if (value is IList list)
            {
                List(field, list, indent);
            }
            else
            {
                Field(field, value, indent);
            }
        }
    }

    private void Field(FieldDescriptor field, object value, int indent)
    {
        var label = Words.Sentence(Words.Label(field));
        switch (value)
        {
            case IMessage message when ShortForms.Of(message) is { } text:
                Row(indent, label, text);
                break;
            case IMessage message:
                Row(indent, label, "");
                Message(message, indent + Step);
                break;
            default:
                Row(indent, label, Scalar(field, value));
                break;
        }
    }

    private void List(FieldDescriptor field, IList list, int indent)
    {
        if (field.FieldType != FieldType.Message)
        {
            Row(indent, Words.Sentence(Words.Label(field)), string.Join(", ", list.Cast<object>().Select(item => Scalar(field, item))));
            return;
        }

        var number = 0;
        foreach (IMessage item in list)
        {
            _grid.AddEmptyRow();
            var kind = Kind(item);
            var heading = $"{Words.Sentence(Words.Singular(Words.Label(field)))} {++number}";
            Row(indent, kind is null ? heading : $"{heading}: {Scalar(kind, kind.Accessor.GetValue(item))}", "");
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
            Row(indent, Words.Sentence(Scalar(Advisory.Descriptor.FindFieldByNumber(Advisory.SeverityFieldNumber), advisory.Severity)),
                advisory.Field.Length == 0 ? advisory.Text : $"{advisory.Field}: {advisory.Text}");
        }
    }

    private void Row(int indent, string label, string text) => _grid.AddRow(new Text(new string(' ', indent) + label), new Text(text));

    private static string Scalar(FieldDescriptor field, object value) => value switch
    {
        double number => Units.Show(field, number),
        Enum or int when field.FieldType == FieldType.Enum => Words.Value(field.EnumType, (int)value),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
    };
}

using System.Text;

namespace StudioCalc.Drawing;

/// <summary>Writes a day as plain text of 80 columns.</summary>
internal sealed class SheetText
{
    private const int Width = 80;

    private readonly StringBuilder _text = new();

    public static string Write(SheetDay day)
    {
        var sheet = new SheetText();
        sheet.All(day);
        return sheet._text.ToString();
    }

    private void All(SheetDay day)
    {
        Line(day.Title.ToUpperInvariant());
        Line(day.When);
        Lines(day.Promises);
        Section("This plan cannot be kept", day.Broken, line => Item("! ", line));
        var number = 0;
        Section("Cautions", day.Cautions, caution =>
        {
            Item($"{++number}. ", caution.Text);
            foreach (var line in caution.About)
            {
                Item("   - ", line);
            }
        });
        Section("Notes", day.Notes, line => Item("- ", line));
        Section("Running order", day.Rows, Row);
        Section("Pass list for the kitchen", day.Pass, list =>
        {
            Line(list.Name);
            foreach (var task in list.Tasks)
            {
                Item($"  {task.Time}  ", task.Note.Length > 0 ? $"{task.What}, {task.Note}" : task.What);
            }
        });
        Section("Plates", day.Plates, Plate);
        Section("Setups", day.Setups, setup =>
        {
            Line(setup.Name);
            foreach (var line in setup.Lines)
            {
                Item("  ", line);
            }
        });
        Line("");
        Line(day.Foot);
    }

    private void Row(SheetRow row)
    {
        Item($"{row.Time}  ", row.Name);
        var indent = new string(' ', row.Time.Length + 2);
        if (row.Set.Length > 0)
        {
            Item(indent, $"Set {row.Set}");
        }

        if (row.Plates.Count > 0)
        {
            Item(indent, $"Plates: {string.Join(", ", row.Plates)}");
        }

        foreach (var fact in row.Facts)
        {
            Item(indent, fact);
        }
    }

    private void Plate(SheetPlate plate)
    {
        Line($"{plate.Name}{(plate.Use.Length > 0 ? $" ({plate.Use})" : "")}: fire {plate.Fire}");
        foreach (var stage in plate.Stages)
        {
            Item($"  {stage.Time}  ", stage.What);
        }

        foreach (var budget in plate.Budgets)
        {
            Item(budget.IsBroken ? "  ! " : "  - ", $"{budget.Component} waits at most {budget.Limit}; last frame {budget.Until}, {budget.Left}");
        }

        foreach (var fact in plate.Facts)
        {
            Item("  ", fact);
        }
    }

    private void Section<T>(string title, IReadOnlyList<T> items, Action<T> write)
    {
        if (items.Count == 0)
        {
            return;
        }

        Line("");
        Line(title.ToUpperInvariant());
        foreach (var item in items)
        {
            write(item);
        }
    }

    private void Lines(IEnumerable<string> lines)
    {
        foreach (var line in lines)
        {
            Line(line);
        }
    }

    private void Line(string text) => Item("", text);

    // Words that do not fit go on below the first.
    private void Item(string lead, string text)
    {
        var indent = new string(' ', lead.Length);
        var line = new StringBuilder(lead);
        var isEmpty = true;
        foreach (var word in Sheet.Readable(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isEmpty && line.Length + 1 + word.Length > Width)
            {
                _text.Append(line.ToString().TrimEnd()).Append('\n');
                line.Clear().Append(indent);
                isEmpty = true;
            }

            line.Append(isEmpty ? "" : " ").Append(word);
            isEmpty = false;
        }

        _text.Append(line.ToString().TrimEnd()).Append('\n');
    }
}

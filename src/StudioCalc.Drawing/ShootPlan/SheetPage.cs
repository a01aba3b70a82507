using System.Xml.Linq;
using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Writes a day as one page of HTML.</summary>
internal static class SheetPage
{
    private const string Nothing = "default-src 'none'; style-src 'unsafe-inline'";

    public static string Write(SheetDay day, SheetPaper paper, Picture? floor)
    {
        var page = new XElement(
            "html",
            new XAttribute("lang", "en-GB"),
            new XElement(
                "head",
                new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement("meta", new XAttribute("http-equiv", "Content-Security-Policy"), new XAttribute("content", Nothing)),
                new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
                new XElement("title", Readable(day.Title)),
                new XElement("style", SheetStyle.For(paper))),
            new XElement(
                "body",
                Head(day),
                Broken(day),
                Cautions(day),
                Notes(day),
                Order(day),
                Pass(day),
                Plates(day),
                Setups(day),
                Floor(floor),
                new XElement("footer", Text("p", day.Foot))));
        return "<!DOCTYPE html>\n" + page.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    private static XElement Head(SheetDay day) => new(
        "header", Text("h1", day.Title), Text("p", day.When, "when"), day.Promises.Select(line => Text("p", line)));

    private static XElement? Broken(SheetDay day) => day.Broken.Count == 0
        ? null
        : Section("broken", "This plan cannot be kept", new XElement("ul", day.Broken.Select(line => Text("li", line))));

    private static XElement Cautions(SheetDay day) => Section(
        "cautions",
        "Cautions",
        new XElement("ol", day.Cautions.Select(caution => new XElement(
            "li", Readable(caution.Text), caution.About.Count == 0 ? null : new XElement("ul", caution.About.Select(line => Text("li", line)))))));

    private static XElement? Notes(SheetDay day) => day.Notes.Count == 0
        ? null
        : Section("notes", "Notes", new XElement("ul", day.Notes.Select(line => Text("li", line))));

    private static XElement? Order(SheetDay day) => day.Rows.Count == 0
        ? null
        : Section(
            "order",
            "Running order",
            new XElement(
                "table",
                new XElement("thead", new XElement("tr", Text("th", "Frames"), Text("th", "Shot"), Text("th", "Set before"), Text("th", "Plates"))),
                new XElement("tbody", day.Rows.Select(row => new XElement(
                    "tr",
                    Text("td", row.Time, "time"),
                    new XElement("td", Text("strong", row.Name), row.Facts.Select(fact => Text("p", fact))),
                    Labelled("Set before", row.Set),
                    Labelled("Plates", string.Join(", ", row.Plates)))))));

    private static XElement? Pass(SheetDay day) => day.Pass.Count == 0
        ? null
        : Section(
            "pass",
            "Pass list for the kitchen",
            Text("p", "Fire at these times: later costs the day, earlier costs the plate its look."),
            new XElement("div", new XAttribute("class", "lists"), day.Pass.Select(list => new XElement(
                "article",
                Text("h3", list.Name),
                new XElement("table", new XElement("tbody", list.Tasks.Select(task => new XElement(
                    "tr", Text("td", task.Time, "time"), Text("td", task.What, "what"), Text("td", task.Note, "until")))))))));

    private static XElement? Plates(SheetDay day) => day.Plates.Count == 0
        ? null
        : Section("plates", "Plates", new XElement("div", new XAttribute("class", "lists"), day.Plates.Select(Plate)));

    private static XElement Plate(SheetPlate plate) => new(
        "article",
        new XElement("h3", Readable(plate.Name), plate.Use.Length > 0 ? new XElement("span", $" ({plate.Use})") : null),
        new XElement("p", new XAttribute("class", "fire"), $"Fire {plate.Fire}"),
        new XElement("table", new XElement("tbody", plate.Stages.Select(stage => new XElement(
            "tr", Text("td", stage.Time, "time"), Text("td", stage.What))))),
        plate.Budgets.Count == 0
            ? null
            : new XElement(
                "table",
                new XElement("thead", new XElement("tr", Text("th", "Waits"), Text("th", "At most"), Text("th", "Last frame"), Text("th", "Left"))),
                new XElement("tbody", plate.Budgets.Select(budget => new XElement(
                    "tr",
                    budget.IsBroken ? new XAttribute("class", "over") : null,
                    Text("td", budget.Component),
                    Text("td", budget.Limit, "time"),
                    Text("td", budget.Until, "time"),
                    Text("td", budget.Left, "time"))))),
        plate.Facts.Select(fact => Text("p", fact)));

    private static XElement? Setups(SheetDay day) => day.Setups.Count == 0
        ? null
        : Section("setups", "Setups", new XElement("div", new XAttribute("class", "lists"), day.Setups.Select(setup => new XElement(
            "article", Text("h3", setup.Name), setup.Lines.Select(line => Text("p", line))))));

    private static XElement? Floor(Picture? floor) => floor is null
        ? null
        : Section("floor", "Floor", new XElement("figure", XElement.Parse(floor.Content)));

    private static XElement Section(string id, string title, params object?[] content) =>
        new("section", new XAttribute("id", id), new XElement("h2", title), content);

    // On a narrow screen cells stand below one another and need their column's name.
    private static XElement Labelled(string label, string text)
    {
        var cell = Text("td", text);
        if (text.Length > 0)
        {
            cell.Add(new XAttribute("data-label", label));
        }

        return cell;
    }

    private static XElement Text(string element, string text, string? look = null) =>
        new(element, look is null ? null : new XAttribute("class", look), Readable(text));

    // What XML cannot hold is shown as the sign for it.
    private static string Readable(string text) => Sheet.Readable(text);
}

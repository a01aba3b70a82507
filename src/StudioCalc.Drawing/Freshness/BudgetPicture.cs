using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>Draws a checked budget as a timeline: a row for each step, and one for each component with its window.</summary>
/// <remarks>A step is a box of its likely time, and a line from there to the end that nine of ten draws keep. A window is a bar from the
/// start of its clock to its likely end; it is hatched from the pessimistic end to the optimistic one. The heavy upright line is the last
/// need of the component.</remarks>
public static class BudgetPicture
{
    private const double Width = 1040;
    private const double Margin = 20;
    private const double Row = 24;
    private const double Bar = 14;
    private const double Head = 122;
    private const double Left = 230;
    private const double Right = 820;
    private const double LeftColumn = 920;
    private const double ChanceColumn = 1010;
    private const double MostOfSteps = 1.6;
    private const double NameRoom = 300;

    /// <summary>Draws a budget.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="answer">The answer to its budget.</param>
    public static Picture Draw(RenderBudgetRequest request, CheckBudgetResponse answer)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(answer);
        var title = request.HasTitle ? request.Title : "Freshness budget";
        var lines = Summary(answer).ToList();
        var bottom = Head + (answer.Steps.Count + answer.Components.Count + 1.5) * Row;
        var sheet = new Sheet(Width, bottom + Margin, title, string.Join(' ', lines));
        sheet.Text(Margin, 30, title, bold: true);
        for (var i = 0; i < lines.Count; i++)
        {
            sheet.Text(Margin, 50 + i * 18, lines[i]);
        }

        var axis = new TimeAxis(Left, Right, EndOf(answer));
        sheet.Text(LeftColumn, Head - 5, "Time left", bold: true, anchor: Anchor.End);
        sheet.Text(ChanceColumn, Head - 5, "Holds", bold: true, anchor: Anchor.End);
        axis.Write(sheet, Head, bottom);
        var y = Head;
        foreach (var step in answer.Steps)
        {
            y += Row;
            DrawStep(sheet, axis, step, y);
        }

        y += Row / 2;
        sheet.Line(Margin, y, Width - Margin, y, Sheet.Thin);
        for (var i = 0; i < answer.Components.Count; i++)
        {
            y += Row;
            DrawComponent(sheet, axis, request.Budget.Components[i], i, request.Budget, answer, y);
        }

        return new() { MediaType = "image/svg+xml", FileName = "budget.svg", Content = sheet.ToString() };
    }

    private static void DrawStep(Sheet sheet, TimeAxis axis, StepBudget step, double y)
    {
        var (start, end, p90) = (TimeAxis.Seconds(step.Start), TimeAxis.Seconds(step.End), TimeAxis.Seconds(step.EndP90));
        sheet.Text(Margin, y, Sheet.Cut(step.Name, Left - Margin - 10));
        var middle = y - Bar / 2 + 2;
        sheet.Rectangle(axis.X(start), middle - Bar / 2, axis.X(end) - axis.X(start), Bar, Sheet.Medium);
        sheet.Line(axis.X(end), middle, axis.Within(p90), middle, Sheet.Thin);
        sheet.Line(axis.Within(p90), middle - 4, axis.Within(p90), middle + 4, Sheet.Thin);
        var text = $"{TimeAxis.Clock(end)} ({TimeAxis.Clock(p90)})";
        var after = Math.Max(axis.X(end), axis.Within(p90)) + 8;
        if (after + text.Length * Sheet.Letter < Right)
        {
            sheet.Text(after, y, text);
        }
        else
        {
            sheet.Text(axis.X(start) - 8, y, text, anchor: Anchor.End);
        }
    }

    private static void DrawComponent(
        Sheet sheet, TimeAxis axis, BudgetComponent asked, int index, CheckBudgetRequest budget, CheckBudgetResponse answer, double y)
    {
        var component = answer.Components[index];
        sheet.Text(Margin, y, Sheet.Cut(component.Name, Left - Margin - 10), bold: component.Name == answer.TightestComponent);
        var start = TimeAxis.Seconds(component.ClockStarts);
        for (var i = 0; i < budget.Steps.Count && asked.MostRefreshes > 0; i++)
        {
            if (budget.Steps[i].Refresh is { } refresh && refresh.ComponentIndices.Contains((uint)index))
            {
                DrawWindow(sheet, axis, component, start, TimeAxis.Seconds(answer.Steps[i].Start), y);
                start = TimeAxis.Seconds(answer.Steps[i].End);
            }
        }

        DrawWindow(sheet, axis, component, start, null, y);
        var need = axis.X(TimeAxis.Seconds(component.NeededUntil));
        sheet.Line(need, y - Bar - 2, need, y + 6, Sheet.Heavy);
        var isShort = component.HasSlackS && component.SlackS < 0;
        sheet.Text(LeftColumn, y, component.HasSlackS ? TimeAxis.Clock(component.SlackS) : "no end", bold: isShort, anchor: Anchor.End);
        sheet.Text(ChanceColumn, y, FormattableString.Invariant($"{component.HoldChance:0.####}"), bold: isShort, anchor: Anchor.End);
    }

    private static void DrawWindow(Sheet sheet, TimeAxis axis, ComponentBudget component, double start, double? refreshed, double y)
    {
        var top = y - Bar / 2 + 2 - Bar / 2;
        if (component.Window?.Span is not { } span)
        {
            sheet.Rectangle(axis.X(start), top, axis.Within(refreshed ?? double.MaxValue) - axis.X(start), Bar, Sheet.Medium);
            return;
        }

        var last = refreshed ?? double.MaxValue;
        double At(double time) => axis.Within(Math.Min(start + time, last));
        var (pessimistic, likely) = (At(TimeAxis.Seconds(span.Pessimistic)), At(TimeAxis.Seconds(span.Likely)));
        var optimistic = span.Optimistic is { } hoped ? At(TimeAxis.Seconds(hoped)) : At(double.MaxValue);
        sheet.Hatched([(pessimistic, top), (optimistic, top), (optimistic, top + Bar), (pessimistic, top + Bar)]);
        sheet.Rectangle(pessimistic, top, optimistic - pessimistic, Bar, Sheet.Thin);
        sheet.Rectangle(axis.X(start), top, likely - axis.X(start), Bar, Sheet.Medium);
        if (refreshed is null && axis.IsBeyond(start + TimeAxis.Seconds(span.Likely)))
        {
            sheet.Text(axis.Right - 6, y, $"to {TimeAxis.Clock(start + TimeAxis.Seconds(span.Likely))}", anchor: Anchor.End);
        }
    }

    // What lies far beyond the steps is cut off, and told by its time.
    private static double EndOf(CheckBudgetResponse answer)
    {
        var steps = Math.Max(1, answer.Steps.Max(step => Math.Max(TimeAxis.Seconds(step.EndP90), TimeAxis.Seconds(step.End))));
        var windows = answer.Components.Max(component => component.Window is { } window
            ? TimeAxis.Seconds(component.ClockRestarts ?? component.ClockStarts) + TimeAxis.Seconds(window.Span.Optimistic ?? window.Span.Likely)
            : 0);
        return Math.Min(Math.Max(steps * 1.08, windows * 1.02), steps * MostOfSteps);
    }

    private static IEnumerable<string> Summary(CheckBudgetResponse answer)
    {
        yield return FormattableString.Invariant(
            $"Chance that all hold: {answer.AllHoldChance:0.####} (error {answer.AllHoldChanceError:0.####}, {answer.Draws} draws, seed {answer.Seed}); ")
            + $"with likely times {(answer.AllHoldLikely ? "all hold" : "not all hold")}."
            + (answer.TightestComponent.Length > 0 ? $" Tightest: {Sheet.Cut(answer.TightestComponent, NameRoom)}." : "");
        yield return "Minutes and seconds from the start. Steps: box, likely; line and brackets, the end that nine of ten draws keep.";
        yield return "Components: bar from the start of the clock to the likely end of its look, hatched from the pessimistic to the optimistic end;"
            + " heavy line: last needed.";
    }
}

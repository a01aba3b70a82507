using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>The sheet of a day of shooting for everybody on the set: cautions, running order, pass list, plates, setups, floor.</summary>
public static class CallSheet
{
    /// <summary>The sheet as one page of HTML without scripts and without anything from outside, for a screen of any width and for paper.</summary>
    /// <param name="input">What it shows.</param>
    public static Document Html(CallSheetInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return new()
        {
            MediaType = "text/html; charset=utf-8",
            FileName = "call-sheet.html",
            Content = SheetPage.Write(SheetDay.Of(input), input.Request.Paper, input.Floor),
        };
    }

    /// <summary>The same as plain text.</summary>
    /// <param name="input">What it shows.</param>
    public static Document Text(CallSheetInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return new() { MediaType = "text/plain; charset=utf-8", FileName = "call-sheet.txt", Content = SheetText.Write(SheetDay.Of(input)) };
    }
}

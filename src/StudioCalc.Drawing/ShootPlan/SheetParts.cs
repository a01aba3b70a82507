namespace StudioCalc.Drawing;

/// <summary>A caution: what to mind, and what it is about here.</summary>
internal sealed record SheetCaution(string Text, IReadOnlyList<string> About);

/// <summary>A row of the running order.</summary>
/// <param name="Time">When, as two times.</param>
/// <param name="Name">The shot with its place, or what else happens.</param>
/// <param name="Set">What is done to the set before, and when.</param>
/// <param name="Plates">The plates that it needs.</param>
/// <param name="Facts">What else the crew needs.</param>
internal sealed record SheetRow(string Time, string Name, string Set, IReadOnlyList<string> Plates, IReadOnlyList<string> Facts);

/// <summary>A stage or a task in time.</summary>
internal sealed record SheetTask(string Time, string What, string Note);

/// <summary>A budget as it comes out.</summary>
/// <param name="Component">What waits.</param>
/// <param name="Limit">How long it lasts.</param>
/// <param name="Until">When its last frame is.</param>
/// <param name="Left">What is left then.</param>
/// <param name="IsBroken">Whether that is less than nothing.</param>
internal sealed record SheetBudget(string Component, string Limit, string Until, string Left, bool IsBroken);

/// <summary>A plate.</summary>
internal sealed record SheetPlate(
    string Name, string Use, string Fire, IReadOnlyList<SheetTask> Stages, IReadOnlyList<SheetBudget> Budgets, IReadOnlyList<string> Facts);

/// <summary>What a station does in order, or a setup of the set: a heading and lines.</summary>
internal sealed record SheetList(string Name, IReadOnlyList<SheetTask> Tasks);

/// <summary>A setup in words.</summary>
internal sealed record SheetSetup(string Name, IReadOnlyList<string> Lines);

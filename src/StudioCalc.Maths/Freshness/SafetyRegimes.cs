namespace StudioCalc.Maths;

/// <summary>The published regimes of food safety that are held, as data: <c>safety_regimes.csv</c>, one row a limit.</summary>
public static class SafetyRegimes
{
    private static readonly string[] Columns =
    [
        "id", "regime_id", "name", "jurisdiction", "is_time_limit", "count", "above_celsius", "below_celsius", "limit_s",
        "hot_room_celsius", "hot_room_limit_s", "without_procedure_s", "start_at_most_celsius", "start_at_least_celsius",
        "never_above_celsius", "is_once_period", "food", "chill_limit_s",
        "action_running", "action_late", "action_over", "source_kind", "source",
    ];

    private static readonly CatalogueTable Table = CatalogueTable.Read(CatalogueTable.BuiltIn("safety_regimes.csv"), Columns);

    /// <summary>Every limit, by its own id.</summary>
    public static IReadOnlyList<SafetyRegime> All { get; } = [.. Table.Rows.Select(Read)];

    /// <summary>The ids of the regimes, in order.</summary>
    public static IReadOnlyList<string> Ids { get; } =
        [.. All.Select(row => row.RegimeId).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>Changes whenever a row does.</summary>
    public static string Version => Table.Version;

    /// <summary>Reads limits from comma-separated values of the same form.</summary>
    /// <exception cref="InvalidDataException">A row is not complete, not in order, or contradicts itself.</exception>
    public static IReadOnlyList<SafetyRegime> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return [.. CatalogueTable.Read(text, Columns).Rows.Select(Read)];
    }

    private static SafetyRegime Read(CatalogueRow row)
    {
        var (room, roomLimit) = (row.OptionalNumber("hot_room_celsius"), row.OptionalNumber("hot_room_limit_s"));
        var regime = new SafetyRegime(
            row.Id,
            row.Text("regime_id"),
            row.Text("name"),
            row.Text("jurisdiction"),
            row.YesOrNo("is_time_limit"),
            row.Choice<SafetyCount>("count"),
            row.OptionalNumber("above_celsius"),
            row.OptionalNumber("below_celsius"),
            row.Number("limit_s"),
            room is { } celsius && roomLimit is { } limit ? new(celsius, limit) : null,
            row.OptionalNumber("without_procedure_s"),
            row.OptionalNumber("start_at_most_celsius"),
            row.OptionalNumber("start_at_least_celsius"),
            row.OptionalNumber("never_above_celsius"),
            row.YesOrNo("is_once_period"),
            row.OptionalText("food") is null ? null : row.Choice<SafetyFood>("food"),
            row.OptionalNumber("chill_limit_s"),
            row.Text("action_running"),
            row.OptionalText("action_late"),
            row.Text("action_over"),
            row.Choice<SourceKind>("source_kind"),
            row.Text("source"));
        Check(row, regime, room is null != roomLimit is null);
        return regime;
    }

    private static void Check(CatalogueRow row, SafetyRegime regime, bool isRoomHalf)
    {
        if (regime.LimitS < 0)
        {
            throw row.Bad("limit_s", "must not be negative");
        }

        if (isRoomHalf || regime.HotRoom?.LimitS >= regime.LimitS)
        {
            throw row.Bad("hot_room_limit_s", "stands with its temperature, and is shorter than the limit");
        }

        if (regime.WithoutProcedureS >= regime.LimitS)
        {
            throw row.Bad("without_procedure_s", "must be shorter than the limit");
        }

        if (regime.ChillLimitS >= regime.LimitS || regime.ChillLimitS is null != regime.ActionLate is null)
        {
            throw row.Bad("chill_limit_s", "stands with an action, and is shorter than the limit");
        }

        if (regime.AboveCelsius >= regime.BelowCelsius)
        {
            throw row.Bad("below_celsius", "must be above the lower end");
        }

        var needsAbove = regime.Count is SafetyCount.CoolingFrom or SafetyCount.CoolingFromStart;
        if ((needsAbove && regime.AboveCelsius is null) || (regime.Count == SafetyCount.CoolingFrom && regime.BelowCelsius is null))
        {
            throw row.Bad("above_celsius", "cooling needs its ends");
        }
    }
}

namespace StudioCalc.Maths;

/// <summary>The catalogue of holding profiles.</summary>
/// <remarks>It is data: <c>holding_profiles.csv</c>, one row a profile. A melting range stands for the set point of fats and jellies, the
/// upper end of it for the early end of the look: they set somewhat below it, so that it errs on the early side.</remarks>
public static class HoldingProfiles
{
    private static readonly string[] Columns =
    [
        "id", "component", "ends_by", "clock_start", "model",
        "window_pessimistic_s", "window_likely_s", "window_optimistic_s",
        "set_point_pessimistic_celsius", "set_point_likely_celsius", "set_point_optimistic_celsius",
        "half_life_pessimistic_s", "half_life_likely_s", "half_life_optimistic_s", "share_left",
        "is_wait", "source_kind", "source",
    ];

    private static readonly CatalogueTable Table = CatalogueTable.Read(CatalogueTable.BuiltIn("holding_profiles.csv"), Columns);

    /// <summary>Every profile, by id.</summary>
    public static IReadOnlyList<HoldingProfile> All { get; } = [.. Table.Rows.Select(Read)];

    /// <summary>Changes whenever a row does.</summary>
    public static string Version => Table.Version;

    /// <summary>The profile of an id, or null.</summary>
    public static HoldingProfile? Find(string id) => All.FirstOrDefault(profile => profile.Id == id);

    /// <summary>Reads profiles from comma-separated values of the same form.</summary>
    /// <exception cref="InvalidDataException">A row is not complete, not in order, or contradicts itself.</exception>
    public static IReadOnlyList<HoldingProfile> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return [.. CatalogueTable.Read(text, Columns).Rows.Select(Read)];
    }

    private static HoldingProfile Read(CatalogueRow row)
    {
        var profile = new HoldingProfile(
            row.Id,
            row.Text("component"),
            row.Text("ends_by"),
            row.Choice<ClockStart>("clock_start"),
            row.Choice<HoldingModel>("model"),
            Span(row, "window"),
            Band(row),
            Span(row, "half_life"),
            row.OptionalNumber("share_left"),
            row.Choice<SourceKind>("source_kind"),
            row.Text("source"),
            row.YesOrNo("is_wait"));
        Check(row, profile);
        return profile;
    }

    private static void Check(CatalogueRow row, HoldingProfile profile)
    {
        var isWindow = profile.Model == HoldingModel.FixedWindow;
        var isDecay = profile.Model == HoldingModel.FirstOrder;
        if (profile.Window is null == isWindow)
        {
            throw row.Bad("window_likely_s", "stands on fixed windows, and only there");
        }

        if (profile.HalfLife is null == isDecay || profile.ShareLeft is null == isDecay)
        {
            throw row.Bad("half_life_likely_s", "stands with a share on first-order decay, and only there");
        }

        if (profile.SetPoint is null == !(isWindow || isDecay))
        {
            throw row.Bad("set_point_likely_celsius", "stands where a model computes the time, and only there");
        }

        if (profile.ShareLeft is <= 0 or >= 1)
        {
            throw row.Bad("share_left", "must lie between 0 and 1");
        }

        if (profile.SourceKind == SourceKind.Given || (isWindow && profile.SourceKind == SourceKind.Computed))
        {
            throw row.Bad("source_kind", "no fixed window is computed");
        }
    }

    private static HoldingSpan? Span(CatalogueRow row, string name) => Three(row, name, "s") is not var (pessimistic, likely, optimistic)
        ? null
        : pessimistic > 0 && pessimistic <= likely && likely <= optimistic
            ? new HoldingSpan(pessimistic, likely, optimistic)
            : throw row.Bad(name + "_likely_s", "must rise from pessimistic to optimistic, and start above 0");

    // What comes out of the cold warms, so that the lowest temperature is passed first; all else cools.
    private static TemperatureBand? Band(CatalogueRow row)
    {
        if (Three(row, "set_point", "celsius") is not var (pessimistic, likely, optimistic))
        {
            return null;
        }

        var sign = row.Choice<ClockStart>("clock_start") == ClockStart.OutOfCold ? 1 : -1;
        return sign * (likely - pessimistic) >= 0 && sign * (optimistic - likely) >= 0
            ? new TemperatureBand(pessimistic, likely, optimistic)
            : throw row.Bad("set_point_likely_celsius", "must run in the order in which they are passed");
    }

    private static (double Pessimistic, double Likely, double Optimistic)? Three(CatalogueRow row, string name, string unit)
    {
        double?[] values =
        [
            row.OptionalNumber($"{name}_pessimistic_{unit}"),
            row.OptionalNumber($"{name}_likely_{unit}"),
            row.OptionalNumber($"{name}_optimistic_{unit}"),
        ];
        return values switch
        {
            [{ } pessimistic, { } likely, { } optimistic] => (pessimistic, likely, optimistic),
            [null, null, null] => null,
            _ => throw row.Bad($"{name}_likely_{unit}", "all three or none"),
        };
    }
}

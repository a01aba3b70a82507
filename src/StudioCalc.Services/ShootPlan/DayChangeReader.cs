using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads changes of a day.</summary>
internal static class DayChangeReader
{
    private const double LeastChance = 0.001;

    /// <summary>The changed day, or none where the change makes no sense; that is noted.</summary>
    public static UncertainDay? ReadChange(this RequestContext context, DayChange change, DayRead read, FieldPath path)
    {
        var day = new UncertainDay(read.Day, read.Uncertainty);
        var (takesName, takesValue) = (change.Kind is DayChangeKind.StationMore or DayChangeKind.AttributeShared,
            change.Kind is DayChangeKind.CookingFactor or DayChangeKind.BudgetFactor or DayChangeKind.SetupFactor or DayChangeKind.KeepChance);
        var (namePath, valuePath) = (path[DayChange.NameFieldNumber], path[DayChange.ValueFieldNumber]);
        if (!Suits(context, takesName, change.HasName, namePath) | !Suits(context, takesValue, change.HasValue, valuePath))
        {
            return null;
        }

        switch (change.Kind)
        {
            case DayChangeKind.StationMore:
                var station = read.Asked.Crew?.Stations.ToList().FindIndex(one => one.Name == change.Name) ?? -1;
                return station < 0 ? Refuse(context, namePath, "The day has no station of this name.") : day.WithOneMore(station);
            case DayChangeKind.AttributeShared:
                var attribute = read.Attributes.ToList().IndexOf(change.Name);
                return attribute < 0 ? Refuse(context, namePath, "The changes of the set name no such attribute.") : day.WithShared(attribute);
            case DayChangeKind.KeepChance when change.Value is < LeastChance or > 1:
                context.Violations.Add(valuePath.ToString(), RefusalReason.OutOfRange, "As a chance it must be from 0.001 to 1.");
                return null;
            default:
                return change.Kind switch
                {
                    DayChangeKind.StylistMore => day.WithOneMore(read.Stylist),
                    DayChangeKind.CookingFactor => day.WithCooking(change.Value),
                    DayChangeKind.BudgetFactor => day.WithBudgets(change.Value),
                    DayChangeKind.SetupFactor => day.WithSetups(change.Value),
                    _ => day.WithKeeperChance(change.Value),
                };
        }
    }

    private static bool Suits(RequestContext context, bool isTaken, bool isThere, FieldPath path)
    {
        if (isTaken != isThere)
        {
            context.Violations.Add(path.ToString(), isTaken ? RefusalReason.Required : RefusalReason.Conflict,
                isTaken ? "This kind of change needs it." : "This kind of change does not take it.");
        }

        return isTaken == isThere;
    }

    private static UncertainDay? Refuse(RequestContext context, FieldPath path, string text)
    {
        context.Violations.Add(path.ToString(), RefusalReason.Conflict, text);
        return null;
    }
}

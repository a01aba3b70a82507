using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a person should know about a day and its order.</summary>
internal static class DayNotes
{
    public static void NoteDay(this RequestContext context, DayRead day, FieldPath path)
    {
        var plates = path[ShootDay.PlatesFieldNumber];
        for (var i = 0; i < day.Asked.Plates.Count; i++)
        {
            if (day.Asked.Plates[i].NotForEating)
            {
                context.Advisories.Add(Advise.NotForEating(plates.At(i)[DayPlate.NotForEatingFieldNumber]));
            }

            if (day.Asked.Plates[i].Allergens.Count > 0)
            {
                context.Advisories.Add(Advise.AllergensAsDeclared(plates.At(i)[DayPlate.AllergensFieldNumber]));
            }
        }

        if (day.Asked.Plates.Where((plate, i) => day.Plates[i] is null && plate.Use is PlateUse.StandIn or PlateUse.Spare).Count() is > 0 and var untimed)
        {
            context.Advisories.Add(Advise.PlatesNotTimed(untimed));
        }
    }

    public static void NoteOrder(this RequestContext context, DayRead day, Planning.ShootOrder found, ShootOrder? order, FieldPath path)
    {
        if (order is not null)
        {
            var wait = order.Plates.Select(plate => plate.Wait.ToSeconds()).DefaultIfEmpty().Max();
            if (wait > 0 || order.Plates.Any(plate => plate.Budgets.Count > 0))
            {
                // A plate that waits is on a clock of its own, whatever its components are.
                context.Advisories.Add(Advise.PlatesWait(wait));
                context.NoteLooks();
            }

            if (order.Plates.SelectMany(plate => plate.Budgets).Select(budget => budget.SlackS).DefaultIfEmpty().Min() is < 0 and var slack)
            {
                context.Advisories.Add(Advise.NoHurry(slack));
            }

            if (!order.IsProved)
            {
                context.Advisories.Add(Advise.OrderNotProved(found.StatesKept));
            }
        }

        if (found.Splits.Count > 0)
        {
            context.Advisories.Add(Advise.DayOrderedInParts(day.Day.Blocks.Count));
        }

        if (found.SetupDetour is var (from, over, to))
        {
            context.Advisories.Add(Advise.DetourInChanges(
                path[ShootDay.ChangesFieldNumber][SetChanges.MatrixFieldNumber].ItemAt(from), from, over, to));
        }
    }
}

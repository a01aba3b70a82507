using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a person should know about holding times.</summary>
internal static class FreshnessNotes
{
    private const double HottestVapourCelsius = 90;

    // Colder food is under control by every regime that is held.
    private const double ColdCelsius = 5;

    /// <summary>Notes what belongs to one component.</summary>
    public static void NoteHolding(this RequestContext context, HoldingRead read, Holding holding, HoldingPaths paths)
    {
        if (holding.Window?.SourceKind is V1.SourceKind.Practice or V1.SourceKind.Memory)
        {
            context.Advisories.Add(Advise.WindowFromPractice(paths.Item.ToString()));
        }

        if (holding.HoldsOn?.Reason == HoldsOnReason.NoDew)
        {
            context.Advisories.Add(Advise.NoDewForms(paths.Item.ToString(), holding.HoldsOn.SettlesAtCelsius));
        }

        if (read is CoolingRead { Food.Body: FilmBody film } && holding.Window is { } window && window.Span.Likely.ToSeconds() == 0)
        {
            context.Advisories.Add(Advise.FilmTakesPlate(paths.Item.ToString(), film.ContactCelsius));
        }

        switch (read)
        {
            case WindowRead { IsWait: true } or DecayRead { IsWait: true }:
                context.Advisories.Add(Advise.WindowIsWait(paths.Item.ToString()));
                break;
            case CoolingRead cooling:
                context.NoteFood(cooling.Food.Body, paths.Item);
                break;
            case LeavesRead { Food: { } food }:
                context.NoteFood(food.Body, paths.Item);
                break;
        }
    }

    /// <summary>Notes what belongs to food that is followed.</summary>
    public static void NoteFood(this RequestContext context, FoodBody body, FieldPath path)
    {
        if (FoodCourse.SurfaceOf(body).Wetness > 0 && body.StartCelsius > HottestVapourCelsius)
        {
            context.Advisories.Add(Advise.EvaporationAtItsEnd(path.ToString(), body.StartCelsius));
        }

        if (body is not ScoopBody && body.StartCelsius > ColdCelsius)
        {
            context.NoteLooks();
        }
    }

    /// <summary>Notes, once an answer, that looks are not safety.</summary>
    public static void NoteLooks(this RequestContext context)
    {
        if (!context.Advisories.Exists(advisory => advisory.Code == AdvisoryCode.LooksNotSafety))
        {
            context.Advisories.Add(Advise.LooksNotSafety());
        }
    }
}

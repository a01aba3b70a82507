using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Notes what a person should know about food on a set.</summary>
internal static class SafetyNotes
{
    private static readonly FieldPath Request = FieldPath.Root(CheckFoodSafetyRequest.Descriptor);
    private static readonly FieldPath Answer = FieldPath.Root(CheckFoodSafetyResponse.Descriptor);

    public static void Note(RequestContext context, CheckFoodSafetyRequest request, IReadOnlyList<Maths.SafetyClock> clocks)
    {
        NoteClocks(context, clocks);
        if (request.RegimeIds.Count == 0)
        {
            context.Advisories.Add(Advise.RegimeAssumed(Request[CheckFoodSafetyRequest.RegimeIdsFieldNumber]));
        }

        if (request.NotForEating.Count > 0)
        {
            context.Advisories.Add(Advise.NotForEating(Request[CheckFoodSafetyRequest.NotForEatingFieldNumber]));
        }

        if (request.DeclaredAllergens.Count > 0)
        {
            context.Advisories.Add(Advise.AllergensAsDeclared(Answer[CheckFoodSafetyResponse.DeclaredAllergensFieldNumber]));
        }

        NoteHazards(context, request);
    }

    private static void NoteClocks(RequestContext context, IReadOnlyList<Maths.SafetyClock> clocks)
    {
        for (var i = 0; i < clocks.Count; i++)
        {
            var field = Answer[CheckFoodSafetyResponse.ClocksFieldNumber].ItemAt(i);
            context.Advisories.Add(clocks[i].State switch
            {
                Maths.SafetyState.Over => Advise.SafetyClockOver(field, clocks[i].CountedS!.Value, clocks[i].LimitS),
                Maths.SafetyState.Running => Advise.SafetyClockRunning(field, clocks[i].CountedS!.Value, clocks[i].LeftS!.Value),
                _ => Advise.SafetyClockUnknown(field),
            });
        }
    }

    private static void NoteHazards(RequestContext context, CheckFoodSafetyRequest request)
    {
        for (var i = 0; i < request.Hazards.Count; i++)
        {
            var field = Request[CheckFoodSafetyRequest.HazardsFieldNumber].ItemAt(i);
            context.Advisories.Add(request.Hazards[i] switch
            {
                SetHazard.HotPlates => Advise.HotPlates(field),
                SetHazard.ColdGlass => Advise.GlassMayCrack(field),
                SetHazard.Torch or SetHazard.Aerosol => Advise.TorchOrAerosol(field),
                SetHazard.DryIce => Advise.DryIce(field),
                _ => throw new ArgumentOutOfRangeException(nameof(request)),
            });
        }
    }
}

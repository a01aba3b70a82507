using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>CheckFoodSafety.</content>
public sealed partial class FreshnessAdapter
{
    private static readonly FieldPath SafetyRoot = FieldPath.Root(CheckFoodSafetyRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<CheckFoodSafetyResponse> CheckFoodSafety(CheckFoodSafetyRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        var reading = new RequestContext(null);
        CheckRegimes(reading, request);
        reading.ThrowIfRefused();

        var spells = request.Spells.Select(spell => new Maths.SafetySpell(
            spell.Duration.ToSeconds(), spell.StartCelsius, spell.HasEndCelsius ? spell.EndCelsius : spell.StartCelsius));
        var facts = new SafetyFacts(
            request.HasAirCelsius ? request.AirCelsius : null, request.WrittenProcedure, [.. request.Food.Select(food => food.ToMaths())]);
        var clocks = SafetyClocks.Run([.. spells], facts, request.RegimeIds);
        var isNotForEating = request.NotForEating.Count > 0 || clocks[0].State == Maths.SafetyState.Over;
        var response = new CheckFoodSafetyResponse
        {
            State = clocks[0].State.ToContract(),
            Clocks = { clocks.Select(clock => SafetyWriter.Write(clock, isNotForEating)) },
            NotForEating = isNotForEating,
            DeclaredAllergens = { request.DeclaredAllergens },
            CatalogueVersion = SafetyRegimes.Version,
            ModelRevision = ModelRevision.Current,
        };
        SafetyNotes.Note(reading, request, clocks);
        response.Advisories.Add(reading.Advisories);
        return Task.FromResult(response);
    }

    private static void CheckRegimes(RequestContext context, CheckFoodSafetyRequest request)
    {
        for (var i = 0; i < request.RegimeIds.Count; i++)
        {
            if (!SafetyRegimes.Ids.Contains(request.RegimeIds[i], StringComparer.Ordinal))
            {
                context.Violations.Add(
                    SafetyRoot[CheckFoodSafetyRequest.RegimeIdsFieldNumber].ItemAt(i),
                    RefusalReason.UnknownMark,
                    $"No such regime is held; there are {string.Join(", ", SafetyRegimes.Ids)}.");
            }
        }
    }
}

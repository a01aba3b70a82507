using StudioCalc.Maths;
using StudioCalc.V1;
using Unknown = StudioCalc.V1.FlashUnknown;

namespace StudioCalc.Services;

/// <summary>Reads the powers that the first unit of a flash request has.</summary>
internal static class SolveFlashPowers
{
    private const double DefaultLowestPowerBelowFullStops = 7;
    private const double Rounding = 1e-9;

    /// <summary>The powers from full downwards in stops below full, or null after noting every bad field.</summary>
    public static IReadOnlyList<double>? Read(RequestContext context, SolveFlashRequest request, FieldPath root)
    {
        SolveFlashReader.ForPowerOnly(context, request, request.HasPowerScale, SolveFlashRequest.PowerScaleFieldNumber);
        SolveFlashReader.ForPowerOnly(context, request, request.Powers.Count > 0, SolveFlashRequest.PowersFieldNumber);
        return request.Powers.Count > 0 ? Listed(context, request, root) : Even(context, request, root);
    }

    private static IReadOnlyList<double>? Even(RequestContext context, SolveFlashRequest request, FieldPath root)
    {
        var lowest = request.LowestPower is null
            ? DefaultLowestPowerBelowFullStops
            : context.Read(request.LowestPower, root[SolveFlashRequest.LowestPowerFieldNumber]);
        if (request.Unknown != Unknown.Power && request.Units[0].Power is { } own
            && context.Silent().Read(own, SolveFlashUnits.Path(0, V1.FlashUnit.PowerFieldNumber)) > lowest + Rounding)
        {
            context.Violations.Add(
                SolveFlashUnits.Path(0, V1.FlashUnit.PowerFieldNumber).ToString(), RefusalReason.Conflict,
                "The unit stands below its lowest power; state the lowest power of this unit.");
        }

        return lowest is { } below
            ? FlashPowers.Steps(request.HasPowerScale ? request.PowerScale.ToMaths() : Maths.StopScale.Tenth, below)
            : null;
    }

    private static IReadOnlyList<double>? Listed(RequestContext context, SolveFlashRequest request, FieldPath root)
    {
        if (request.HasPowerScale)
        {
            Refuse(SolveFlashRequest.PowerScaleFieldNumber);
        }

        if (request.LowestPower is not null)
        {
            Refuse(SolveFlashRequest.LowestPowerFieldNumber);
        }

        var path = root[SolveFlashRequest.PowersFieldNumber];
        var powers = request.Powers.Select((power, i) => context.Read(power, path.At(i))).ToList();
        return powers.Contains(null) ? null : [.. powers.OfType<double>().Order()];

        void Refuse(int fieldNumber) => context.Violations.Add(
            root[fieldNumber].ToString(), RefusalReason.Conflict, "Cannot stand beside a list of powers.");
    }
}

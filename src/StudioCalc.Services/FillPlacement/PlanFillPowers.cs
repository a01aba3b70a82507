using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads the powers that a head has, in stops below full.</summary>
internal static class PlanFillPowers
{
    private const double Rounding = 1e-9;

    /// <summary>Reads the powers; null after noting a bad one.</summary>
    public static IReadOnlyList<double>? Read(RequestContext context, PlanFillRequest request, FieldPath root)
    {
        if (request.PowerList is { } list)
        {
            var path = root[PlanFillRequest.PowerListFieldNumber][PowerList.PowersFieldNumber];
            double?[] listed = [.. list.Powers.Select((power, i) => context.Read(power, path.At(i)))];
            return listed.Contains(null) ? null : [.. listed.OfType<double>()];
        }

        return Steps(context, request.PowerSteps, root[PlanFillRequest.PowerStepsFieldNumber]);
    }

    private static double[]? Steps(RequestContext context, PowerSteps steps, FieldPath path)
    {
        var highestPath = path[PowerSteps.HighestPowerFieldNumber];
        var lowest = context.Read(steps.LowestPower, path[PowerSteps.LowestPowerFieldNumber]);
        var highest = steps.HighestPower is null ? 0 : context.Read(steps.HighestPower, highestPath);
        if (lowest is not { } low || highest is not { } high)
        {
            return null;
        }

        double[] powers = [.. FlashPowers.Steps(steps.Scale.ToMaths(), low).Where(power => power >= high - Rounding)];
        if (powers.Length > 0)
        {
            return powers;
        }

        var isBelow = high > low;
        context.Violations.Add((isBelow ? highestPath : path[PowerSteps.LowestPowerFieldNumber]).ToString(), RefusalReason.Conflict,
            isBelow ? "Must not be below the lowest power." : "No step of the scale lies from here to the highest power.");
        return null;
    }
}

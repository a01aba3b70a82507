using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads light lost in filters and by focusing close, in stops.</summary>
internal static class LossReader
{
    /// <summary>Reads a stack of filters; their stops add up.</summary>
    public static double ReadLossStops<TTrail>(IEnumerable<Filter> filters, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var loss = trail.Given("n", 0, "stops", "no filter yet");
        foreach (var filter in filters)
        {
            loss = filter.StrengthCase switch
            {
                Filter.StrengthOneofCase.OpticalDensity => Filters.AddDensity(loss, filter.OpticalDensity, ref trail),
                Filter.StrengthOneofCase.Factor => Filters.AddFactor(loss, filter.Factor, ref trail),
                Filter.StrengthOneofCase.LossStops => Filters.AddStops(loss, filter.LossStops, ref trail),
                _ => throw new ArgumentOutOfRangeException(nameof(filters)),
            };
        }

        return loss;
    }

    /// <summary>Reads the loss of focusing close; null after noting a bad field. Nothing given is nothing lost.</summary>
    public static double? Read<TTrail>(this RequestContext context, CloseUp? closeUp, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        switch (closeUp?.ValueCase)
        {
            case CloseUp.ValueOneofCase.Magnification:
                var (m, p) = (closeUp.Magnification.Magnification, closeUp.Magnification.HasPupilMagnification ? closeUp.Magnification.PupilMagnification : 1);
                return closeUp.Magnification.Reversed ? CloseUpLoss.Reversed(m, p, ref trail) : CloseUpLoss.Forward(m, p, ref trail);
            case CloseUp.ValueOneofCase.ExposureFactor:
                return CloseUpLoss.FromFactor(closeUp.ExposureFactor, ref trail);
            case CloseUp.ValueOneofCase.FNumbersAreEffective when !closeUp.FNumbersAreEffective:
                context.Violations.Add(path[CloseUp.FNumbersAreEffectiveFieldNumber].ToString(), RefusalReason.Conflict,
                    "Must be true; where the f-numbers are as set, give the magnification or the factor.");
                return null;
            default:
                return trail.Given("c", 0, "stops", closeUp is null ? "not close" : "f-numbers are effective already");
        }
    }
}

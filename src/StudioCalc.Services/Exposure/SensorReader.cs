using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads the lens factor of an evaluation.</summary>
internal static class SensorReader
{
    private static readonly FieldPath Root = FieldPath.Root(EvaluateExposureRequest.Descriptor);

    public static double LensFactor<TTrail>(RequestContext context, EvaluateExposureRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (request.LensTransmission is not { } lens)
        {
            return request.HasLensFactor ? request.LensFactor : Maths.LensFactor.Standard;
        }

        if (request.HasLensFactor)
        {
            context.Violations.Add(Root[EvaluateExposureRequest.LensFactorFieldNumber].ToString(), RefusalReason.Conflict,
                "Give the lens factor or the transmission of the lens, not both.");
        }

        return Maths.LensFactor.FromTransmission(
            lens.Transmittance, lens.HasVignetting ? lens.Vignetting : 1, lens.AngleDeg, ref trail);
    }
}

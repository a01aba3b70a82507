using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads the blur that passes as sharp. What cannot be is noted, and the value is then null.</summary>
internal static class PermittedBlurReader
{
    /// <summary>Reads the blur that passes as sharp. [mm]</summary>
    public static double? ReadBlurMm<TTrail>(
        this RequestContext context, V1.PermittedBlur blur, SensorRead? sensor, FieldPath path, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("permitted blur");
        switch (blur.CriterionCase)
        {
            case V1.PermittedBlur.CriterionOneofCase.DiameterUm:
                return trail.Given("c", blur.DiameterUm / 1000, "mm", "diameter_um over 1000");
            case V1.PermittedBlur.CriterionOneofCase.Named when sensor is not null:
                return Maths.PermittedBlur.ByDiagonalMm(sensor.WidthMm, sensor.HeightMm, Divisor(blur.Named), ref trail);
            case V1.PermittedBlur.CriterionOneofCase.Print when sensor is not null:
                var print = new Maths.PrintViewing(
                    blur.Print.WidthMm, blur.Print.HeightMm, blur.Print.ViewingDistanceMm, blur.Print.ResolvedPerMm);
                return Maths.PermittedBlur.ByPrintMm(sensor.WidthMm, sensor.HeightMm, print, ref trail);
            case V1.PermittedBlur.CriterionOneofCase.Pixels when sensor is { LongSidePixels: { } pixels }:
                return Maths.PermittedBlur.ByPixelsMm(sensor.LongSideMm, pixels, blur.Pixels, ref trail);
            case V1.PermittedBlur.CriterionOneofCase.Pixels:
                context.Violations.Add(path[V1.PermittedBlur.PixelsFieldNumber].ToString(), RefusalReason.Conflict,
                    "Needs the sensor with its size and pixels; give them, or a diameter.");
                return null;
            default:
                var number = blur.CriterionCase == V1.PermittedBlur.CriterionOneofCase.Named
                    ? V1.PermittedBlur.NamedFieldNumber
                    : V1.PermittedBlur.PrintFieldNumber;
                context.Violations.Add(path[number].ToString(), RefusalReason.Conflict,
                    "Needs the size of the sensor; give it, or a diameter.");
                return null;
        }
    }

    private static double Divisor(BlurCriterion criterion) => criterion switch
    {
        BlurCriterion.Diagonal1000 => 1000,
        BlurCriterion.Diagonal1442 => 1442,
        BlurCriterion.Diagonal1500 => 1500,
        BlurCriterion.Diagonal1730 => 1730,
        _ => throw new ArgumentOutOfRangeException(nameof(criterion)),
    };
}

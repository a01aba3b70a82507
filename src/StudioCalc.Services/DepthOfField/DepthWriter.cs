using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes what depth calls share: apertures that stand on a mark or on none, obstacles and remedies.</summary>
internal static class DepthWriter
{
    /// <summary>An exact f-number with the mark that is set for it; no mark where that is none.</summary>
    public static ApertureAnswer Aperture(double exact, double set, ApertureRange range)
    {
        var answer = CameraWriter.Aperture(set, range.Scale);
        answer.FNumber = exact;
        answer.RestStops = 0;
        if (!range.IsMark(set))
        {
            answer.ClearMark();
            answer.ClearTenths();
        }
        else if (!exact.Equals(set))
        {
            answer.RestStops = Marks.Aperture.Stops(exact, set);
        }

        return answer;
    }

    public static V1.DepthObstacle Obstacle(Maths.DepthObstacle obstacle) => obstacle switch
    {
        Maths.DepthObstacle.SmallestAperture => V1.DepthObstacle.SmallestAperture,
        Maths.DepthObstacle.Diffraction => V1.DepthObstacle.Diffraction,
        Maths.DepthObstacle.GivenAperture => V1.DepthObstacle.GivenAperture,
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle)),
    };

    public static V1.DepthRemedy Remedy(Maths.DepthRemedy remedy, ApertureRange range, SensorRead? sensor)
    {
        var answer = new V1.DepthRemedy { Kind = Kind(remedy.Kind), Aperture = Aperture(remedy.FNumber, remedy.FNumber, range) };
        if (remedy.CameraBackMm is { } back)
        {
            answer.CameraBackMm = back;
        }

        if (remedy.Lens is { } lens)
        {
            answer.Magnification = lens.Magnification;
            if (sensor is not null)
            {
                answer.FieldWidthMm = sensor.WidthMm / lens.Magnification;
                answer.FieldHeightMm = sensor.HeightMm / lens.Magnification;
            }
        }

        if (remedy.Frames is { } frames)
        {
            answer.Frames = (uint)frames;
        }

        if (remedy.PermittedBlurMm is { } blur)
        {
            answer.PermittedBlurUm = blur * 1000;
        }

        if (remedy.DepthMm is { } depth)
        {
            answer.DepthMm = depth;
        }

        return answer;
    }

    private static V1.DepthRemedyKind Kind(Maths.DepthRemedyKind kind) => kind switch
    {
        Maths.DepthRemedyKind.FrameWider => V1.DepthRemedyKind.FrameWider,
        Maths.DepthRemedyKind.Stack => V1.DepthRemedyKind.Stack,
        Maths.DepthRemedyKind.PermitMoreBlur => V1.DepthRemedyKind.PermitMoreBlur,
        Maths.DepthRemedyKind.HoldLessDepth => V1.DepthRemedyKind.HoldLessDepth,
        Maths.DepthRemedyKind.CloseAperture => V1.DepthRemedyKind.CloseAperture,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}

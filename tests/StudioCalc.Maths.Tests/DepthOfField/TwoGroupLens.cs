namespace StudioCalc.Maths.Tests;

/// <summary>A lens of two thin groups with a stop between them, traced ray by ray near the axis. It knows no formula of depth
/// of field.</summary>
/// <remarks>The front group stands at 0, light runs towards greater z, subjects have negative z.</remarks>
internal sealed record TwoGroupLens(double FrontFocalMm, double RearFocalMm, double SeparationMm, double StopAtMm, double StopRadiusMm)
{
    /// <summary>Focal length of the whole.</summary>
    public double FocalLengthMm => 1 / Power;

    /// <summary>Exit pupil over entrance pupil diameter.</summary>
    public double PupilMagnification => RearScale / FrontScale;

    /// <summary>Diameter of the entrance pupil.</summary>
    public double EntrancePupilMm => 2 * StopRadiusMm * FrontScale;

    /// <summary>Place of the entrance pupil: the stop as seen through the front group.</summary>
    public double EntrancePupilAtMm => StopAtMm / (1 - StopAtMm / FrontFocalMm);

    /// <summary>Distance from the front to the rear principal plane.</summary>
    public double PrincipalSeparationMm =>
        SeparationMm - SeparationMm * FocalLengthMm / FrontFocalMm - SeparationMm * FocalLengthMm / RearFocalMm;

    private double Power => 1 / FrontFocalMm + 1 / RearFocalMm - SeparationMm / (FrontFocalMm * RearFocalMm);

    private double FrontScale => 1 / (1 - StopAtMm / FrontFocalMm);

    private double RearScale => 1 / (1 - (SeparationMm - StopAtMm) / RearFocalMm);

    /// <summary>Where the image of a point on the axis lies, and how large things are drawn there.</summary>
    public (double AtMm, double Magnification) ImageOf(double subjectAtMm)
    {
        var ray = Behind(0, 1, subjectAtMm);
        var image = SeparationMm - ray.Height / ray.Slope;
        var side = Behind(1, 0, subjectAtMm);
        return (image, Math.Abs(side.Height + side.Slope * (image - SeparationMm)));
    }

    /// <summary>Diameter of the disc that a point on the axis draws on a sensor, by the ray through the edge of the stop.</summary>
    public double BlurMm(double subjectAtMm, double sensorAtMm)
    {
        var slope = StopRadiusMm / AtStop(1, subjectAtMm);
        var ray = Behind(0, slope, subjectAtMm);
        return 2 * Math.Abs(ray.Height + ray.Slope * (sensorAtMm - SeparationMm));
    }

    private double AtStop(double slope, double subjectAtMm)
    {
        var height = -slope * subjectAtMm;
        return height + (slope - height / FrontFocalMm) * StopAtMm;
    }

    private (double Height, double Slope) Behind(double height, double slope, double subjectAtMm)
    {
        height -= slope * subjectAtMm;
        slope -= height / FrontFocalMm;
        height += slope * SeparationMm;
        slope -= height / RearFocalMm;
        return (height, slope);
    }
}

namespace StudioCalc.Maths;

/// <summary>A near and a far point on the axis of a lens of fixed focal length.</summary>
public sealed record DepthPoints
{
    /// <summary>Focal length f, above 0. [mm]</summary>
    public required double FocalLengthMm { get; init; }

    /// <summary>Pupil magnification p, above 0.</summary>
    public double PupilMagnification { get; init; } = 1;

    /// <summary>Separation h of the principal planes. [mm]</summary>
    public double PrincipalSeparationMm { get; init; }

    /// <summary>Whether distances count from the sensor, which stays in its place, or from the entrance pupil, which does.</summary>
    public bool FromSensor { get; init; }

    /// <summary>Distance of the near point. [mm]</summary>
    public required double NearMm { get; init; }

    /// <summary>Distance of the far point, not less than that of the near one. [mm]</summary>
    public required double FarMm { get; init; }

    /// <summary>Distance of the plane about which the points were told; null when they were told by their distances. [mm]</summary>
    public double? PlaneMm { get; init; }

    /// <summary>From the near to the far point. [mm]</summary>
    public double DepthMm => FarMm - NearMm;

    /// <summary>The points around a focused plane, from the entrance pupil.</summary>
    /// <param name="lens">The lens as focused on the plane, not at infinity.</param>
    /// <param name="frontMm">Depth in front of the plane, not negative. [mm]</param>
    /// <param name="behindMm">Depth behind the plane, not negative. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static DepthPoints Around<TTrail>(LensFocus lens, double frontMm, double behindMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(lens);
        var f = trail.Given("f", lens.FocalLengthMm, "mm", "focal length at this focus");
        var m = trail.Given("m", Guard.Positive(lens.Magnification), "", "magnification");
        var p = trail.Given("p", lens.PupilMagnification, "", "pupil_magnification");
        var front = trail.Given("front", Guard.NotNegative(frontMm), "mm", "front_mm");
        var behind = trail.Given("behind", Guard.NotNegative(behindMm), "mm", "behind_mm");
        var plane = trail.Let("plane", f * (1 / m + 1 / p), "mm", "depth of field (1)");
        return new()
        {
            FocalLengthMm = f,
            PupilMagnification = p,
            PrincipalSeparationMm = lens.PrincipalSeparationMm,
            NearMm = trail.Let("near", plane - front, "mm", "depth in front"),
            FarMm = trail.Let("far", plane + behind, "mm", "depth behind"),
            PlaneMm = plane,
        };
    }

    /// <summary>The same points seen from further away.</summary>
    /// <param name="backMm">How much further, not negative. [mm]</param>
    public DepthPoints Moved(double backMm) =>
        this with { NearMm = NearMm + backMm, FarMm = FarMm + backMm, PlaneMm = PlaneMm + backMm };

    /// <summary>Less depth: both points moved by the same share towards a plane between them.</summary>
    /// <param name="share">Share of the depth that is left, from 0 to 1.</param>
    /// <param name="planeMm">Distance of the plane, counted as theirs. [mm]</param>
    public DepthPoints Shrunk(double share, double planeMm) =>
        this with { NearMm = planeMm - share * (planeMm - NearMm), FarMm = planeMm + share * (FarMm - planeMm) };
}

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>A lens and how close it is focused.</summary>
/// <remarks>
/// <code>
/// x = f (1 / m + 1 / p)          entrance pupil to focused plane     (1)
/// u = f (1 + 1 / m)              front principal plane to it         (2)
/// L = f (2 + m + 1 / m) + h      it to the sensor                    (3)
/// m = 2 / (K + sqrt(K² - 4))     with K = (L - h) / f - 2            (4)
/// f = (L - h) / (2 + m + 1 / m)                                      (5)
/// </code>
/// <para>m: image over subject size, 0 with focus at infinity. p: exit pupil over entrance pupil diameter. h: separation of
/// the principal planes, negative where they cross. f: focal length at this focus; lenses that focus inside shorten it close
/// up, and (5) then finds it. (4) exists from L - h = 4 f on: no lens of fixed focal length focuses nearer. Exact for any lens
/// free of aberrations. Source: Gaussian optics, derived in docs/models/depth-of-field.md.</para>
/// </remarks>
public sealed record LensFocus
{
    /// <summary>Makes a focused lens.</summary>
    /// <param name="focalLengthMm">Focal length f at this focus, above 0. [mm]</param>
    /// <param name="magnification">Magnification m, not negative; 0 is focus at infinity.</param>
    /// <param name="pupilMagnification">Pupil magnification p, above 0.</param>
    /// <param name="principalSeparationMm">Separation h of the principal planes. [mm]</param>
    public LensFocus(double focalLengthMm, double magnification, double pupilMagnification = 1, double principalSeparationMm = 0)
    {
        FocalLengthMm = Guard.Positive(focalLengthMm);
        Magnification = Guard.NotNegative(magnification);
        PupilMagnification = Guard.Positive(pupilMagnification);
        PrincipalSeparationMm = Guard.Finite(principalSeparationMm);
    }

    /// <summary>Focal length f at this focus. [mm]</summary>
    public double FocalLengthMm { get; }

    /// <summary>Magnification m; 0 is focus at infinity.</summary>
    public double Magnification { get; }

    /// <summary>Pupil magnification p.</summary>
    public double PupilMagnification { get; }

    /// <summary>Separation h of the principal planes. [mm]</summary>
    public double PrincipalSeparationMm { get; }

    /// <summary>Whether the lens is focused at infinity.</summary>
    public bool IsAtInfinity => Magnification == 0;

    /// <summary>Focused plane from the entrance pupil, x; infinite at infinity. (1) [mm]</summary>
    public double FromEntrancePupilMm => FocalLengthMm * (1 / Magnification + 1 / PupilMagnification);

    /// <summary>Focused plane from the front principal plane, u; infinite at infinity. (2) [mm]</summary>
    public double FromFrontPrincipalPlaneMm => FocalLengthMm * (1 + 1 / Magnification);

    /// <summary>Focused plane from the sensor, L; infinite at infinity. (3) [mm]</summary>
    public double FromSensorMm => FocalLengthMm * (2 + Magnification + 1 / Magnification) + PrincipalSeparationMm;

    /// <summary>Sensor from the entrance pupil: what distances from one differ by from the other. [mm]</summary>
    public double PupilToSensorMm =>
        FocalLengthMm * (2 + Magnification - 1 / PupilMagnification) + PrincipalSeparationMm;

    /// <summary>The factor from set to effective f-number, 1 + m / p. (6)</summary>
    public double EffectiveFactor => 1 + Magnification / PupilMagnification;

    /// <summary>The same lens refocused on a plane at another distance from its entrance pupil, by (1).</summary>
    /// <param name="fromEntrancePupilMm">Distance, beyond f / p. [mm]</param>
    public LensFocus RefocusedAt(double fromEntrancePupilMm) => new(
        FocalLengthMm,
        FocalLengthMm / Guard.Positive(fromEntrancePupilMm - FocalLengthMm / PupilMagnification),
        PupilMagnification,
        PrincipalSeparationMm);

    /// <summary>Magnification of a lens of fixed focal length from its sensor distance, or null where none focuses so
    /// near. (4)</summary>
    /// <param name="sensorDistanceMm">Distance L, above 0. [mm]</param>
    /// <param name="focalLengthMm">Focal length f, above 0. [mm]</param>
    /// <param name="principalSeparationMm">Separation h. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double? MagnificationAt<TTrail>(
        double sensorDistanceMm, double focalLengthMm, double principalSeparationMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (Guard.Positive(sensorDistanceMm) - Guard.Finite(principalSeparationMm) < NearestInFocalLengths * Guard.Positive(focalLengthMm))
        {
            return null;
        }

        var L = trail.Given("L", sensorDistanceMm, "mm", "sensor_distance_mm");
        var f = trail.Given("f", focalLengthMm, "mm", "focal_length_mm");
        var h = trail.Given("h", principalSeparationMm, "mm", "principal_separation_mm");
        var K = trail.Let("K", (L - h) / f - 2, "", "depth of field (4)");
        return trail.Let("m", 2 / (K + Sqrt(Max(K * K - 4, 0))), "", "depth of field (4)");
    }

    /// <summary>Focal length at a focus known by magnification and sensor distance. (5) [mm]</summary>
    /// <param name="sensorDistanceMm">Distance L, greater than h. [mm]</param>
    /// <param name="magnification">Magnification m, above 0.</param>
    /// <param name="principalSeparationMm">Separation h. [mm]</param>
    /// <param name="trail">Follows the sum.</param>
    public static double FocalLengthAt<TTrail>(
        double sensorDistanceMm, double magnification, double principalSeparationMm, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var L = trail.Given("L", Guard.Positive(sensorDistanceMm), "mm", "sensor_distance_mm");
        var m = trail.Given("m", Guard.Positive(magnification), "", "magnification");
        var h = trail.Given("h", Guard.Finite(principalSeparationMm), "mm", "principal_separation_mm");
        return trail.Let("f", (L - h) / (2 + m + 1 / m), "mm", "depth of field (5)");
    }

    /// <summary>Sensor distance over focal length below which no lens of fixed focal length focuses: twice life size apart.</summary>
    public const double NearestInFocalLengths = 4;
}

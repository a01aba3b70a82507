namespace StudioCalc.Maths;

/// <summary>How focus moves through a stack.</summary>
public enum StackMethod
{
    /// <summary>The whole camera moves: magnification stays, the viewpoint moves.</summary>
    FocusingRail,

    /// <summary>The lens refocuses: the viewpoint stays, magnification changes.</summary>
    FocusRing,
}

/// <summary>What a focus stack is to hold.</summary>
/// <param name="Lens">The lens, focused on the front of the subject.</param>
/// <param name="FNumber">Set f-number N, above 0.</param>
/// <param name="PermittedBlurMm">Permitted blur c, above 0. [mm]</param>
/// <param name="DepthMm">Depth S of the subject from its front, above 0. [mm]</param>
/// <param name="OverlapShare">Share o of a frame's depth that the next one covers again, from 0 to below 1.</param>
/// <param name="Method">How focus moves.</param>
public sealed record StackInput(
    LensFocus Lens, double FNumber, double PermittedBlurMm, double DepthMm, double OverlapShare, StackMethod Method)
{
    /// <summary>Common practice, without a source.</summary>
    public const double UsualOverlapShare = 0.2;

    /// <summary>Wavelength for diffraction; null counts defocus alone. [µm]</summary>
    public double? WavelengthUm { get; init; }

    /// <summary>Blur that is left for defocus; null where diffraction leaves none. (41) [mm]</summary>
    public double? DefocusBlurMm => WavelengthUm is { } v
        ? Diffraction.LeftForDefocus(PermittedBlurMm, DepthAperture.AiryGrowthMm(Lens, v) * FNumber)
        : PermittedBlurMm;
}

/// <summary>How long the frames of a stack take.</summary>
/// <param name="RecycleS">Time that a frame takes at least, not negative. [s]</param>
/// <param name="SettleS">Time to settle before each frame, not negative. [s]</param>
/// <param name="AvailableS">Time that the stack may take; null for any. [s]</param>
public sealed record StackTimes(double RecycleS, double SettleS, double? AvailableS);

/// <summary>One frame of a stack. Distances count from the front of the subject, away from the camera.</summary>
/// <param name="FocusMm">The focused plane. [mm]</param>
/// <param name="Magnification">Magnification in it.</param>
/// <param name="FromEntrancePupilMm">The focused plane from the entrance pupil. [mm]</param>
/// <param name="NearMm">The near limit. [mm]</param>
/// <param name="FarMm">The far limit; may be infinite. [mm]</param>
public readonly record struct PlannedFrame(
    double FocusMm, double Magnification, double FromEntrancePupilMm, double NearMm, double FarMm);

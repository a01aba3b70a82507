using static System.Math;

namespace StudioCalc.Maths;

/// <summary>An aperture and focus that hold the main component both as high as the stand-in's and as high as the fresh
/// plate's, with diffraction counted.</summary>
/// <remarks>Two points are held, by <see cref="DepthAperture"/>: the nearer of the two nearest parts, and the farther of the two
/// farthest ones, which lie apart by (49).</remarks>
/// <param name="Lens">The lens, focused so that both points blur alike.</param>
/// <param name="OffsetMm">Focused plane behind the plane through the aim point. [mm]</param>
/// <param name="Aperture">The aperture.</param>
public sealed record FreshPlateSetting(LensFocus Lens, double OffsetMm, ApertureOutcome Aperture)
{
    /// <summary>The setting with the widest aperture, no wider than a given one; null where the lens has none.</summary>
    /// <param name="input">What focus is placed on.</param>
    /// <param name="shiftMm">How far the fresh plate's main component stands nearer. [mm]</param>
    /// <param name="wavelengthUm">Wavelength, above 0. [µm]</param>
    public static FreshPlateSetting? For(PlacementInput input, double shiftMm, double wavelengthUm)
    {
        ArgumentNullException.ThrowIfNull(input);
        var standIn = input.PointsOf(input.Components[input.Main]);
        var both = standIn with { NearMm = standIn.NearMm - Max(shiftMm, 0), FarMm = standIn.FarMm - Min(shiftMm, 0) };
        var widest = Max(input.FNumber ?? 0, input.Range.WidestFNumber);
        if (widest > input.Range.SmallestFNumber || both.NearMm <= 0 || TwoPointFocus.Between(both) is not { } focus)
        {
            return null;
        }

        var none = default(NoTrail);
        var aperture = DepthAperture.Solve(
            focus, input.PermittedBlurMm, wavelengthUm, input.Range with { WidestFNumber = widest }, ref none);
        return aperture.Obstacle == DepthObstacle.None
            ? new(focus.Lens, focus.Lens.FromEntrancePupilMm - input.Aim.FromEntrancePupilMm, aperture)
            : null;
    }
}

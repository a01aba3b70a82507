using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How sharp a component is from its nearest to its farthest part, by defocus.</summary>
public sealed record ComponentBlur
{
    private const double Rounding = 1e-9;

    /// <summary>Nearest part behind the focused plane; negative is in front. [mm]</summary>
    public required double NearOffsetMm { get; init; }

    /// <summary>Farthest part behind the focused plane; negative is in front. [mm]</summary>
    public required double FarOffsetMm { get; init; }

    /// <summary>Blur of the nearest part. [mm]</summary>
    public required double NearBlurMm { get; init; }

    /// <summary>Blur of the farthest part. [mm]</summary>
    public required double FarBlurMm { get; init; }

    /// <summary>Whether all of it is sharp.</summary>
    public required bool IsSharp { get; init; }

    /// <summary>Share of its depth that is sharp, from 0 to 1.</summary>
    public required double SharpShare { get; init; }

    /// <summary>From the nearest to the farthest part. [mm]</summary>
    public double DepthMm => FarOffsetMm - NearOffsetMm;

    /// <summary>Evaluates a component.</summary>
    /// <param name="lens">The lens and its focus, not at infinity.</param>
    /// <param name="fNumber">Set f-number, above 0.</param>
    /// <param name="zone">The sharp zone of both.</param>
    /// <param name="nearMm">Nearest part from the entrance pupil, above 0. [mm]</param>
    /// <param name="farMm">Farthest part from the entrance pupil. [mm]</param>
    public static ComponentBlur Evaluate(LensFocus lens, double fNumber, SharpZone zone, double nearMm, double farMm)
    {
        ArgumentNullException.ThrowIfNull(lens);
        ArgumentNullException.ThrowIfNull(zone);
        var (near, far) = (nearMm - lens.FromEntrancePupilMm, farMm - lens.FromEntrancePupilMm);
        var isSharp = IsWithin(zone, nearMm, farMm);
        var sharp = Min(farMm, zone.FarFromEntrancePupilMm) - Max(nearMm, zone.NearFromEntrancePupilMm);
        return new()
        {
            NearOffsetMm = near,
            FarOffsetMm = far,
            NearBlurMm = PointBlur.DiameterMm(lens, fNumber, near),
            FarBlurMm = PointBlur.DiameterMm(lens, fNumber, far),
            IsSharp = isSharp,
            SharpShare = isSharp ? 1 : farMm > nearMm ? Clamp(sharp / (farMm - nearMm), 0, 1) : 0,
        };
    }

    /// <summary>Whether a depth lies whole within a zone.</summary>
    /// <param name="zone">The sharp zone.</param>
    /// <param name="nearMm">Nearest part from the entrance pupil. [mm]</param>
    /// <param name="farMm">Farthest part from the entrance pupil. [mm]</param>
    public static bool IsWithin(SharpZone zone, double nearMm, double farMm)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return nearMm >= zone.NearFromEntrancePupilMm * (1 - Rounding) && farMm <= zone.FarFromEntrancePupilMm * (1 + Rounding);
    }
}

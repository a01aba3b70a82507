namespace StudioCalc.Maths;

/// <summary>What focus is placed on, and with what.</summary>
public sealed record PlacementInput
{
    /// <summary>The lens as focused on the plane through the aim point, not at infinity.</summary>
    public required LensFocus Aim { get; init; }

    /// <summary>The axis of the camera.</summary>
    public required ViewAxis View { get; init; }

    /// <summary>The components.</summary>
    public required IReadOnlyList<PlacedComponent> Components { get; init; }

    /// <summary>Place of the main one in <see cref="Components"/>.</summary>
    public required int Main { get; init; }

    /// <summary>Permitted blur c, above 0. [mm]</summary>
    public required double PermittedBlurMm { get; init; }

    /// <summary>The given set f-number; null to find the widest that holds the main component.</summary>
    public double? FNumber { get; init; }

    /// <summary>The apertures of the lens.</summary>
    public required ApertureRange Range { get; init; }

    /// <summary>How much higher the fresh plate's main component stands. [mm]</summary>
    public double FreshPlateHigherMm { get; init; }

    /// <summary>The apertures to choose from; only defocus counts.</summary>
    public ApertureChoice Choice => new(FNumber is { } given ? [given] : Range.Settable(), null);

    /// <summary>The near and the far part of a component from the entrance pupil.</summary>
    /// <param name="component">The component.</param>
    public DepthPoints PointsOf(PlacedComponent component)
    {
        ArgumentNullException.ThrowIfNull(component);
        var none = default(NoTrail);
        var (near, far) = View.DepthOf(component.Shape, ref none);
        return new()
        {
            FocalLengthMm = Aim.FocalLengthMm,
            PupilMagnification = Aim.PupilMagnification,
            PrincipalSeparationMm = Aim.PrincipalSeparationMm,
            NearMm = Aim.FromEntrancePupilMm + near,
            FarMm = Aim.FromEntrancePupilMm + far,
        };
    }
}

/// <summary>A component on the set.</summary>
/// <param name="Shape">Its place and size.</param>
/// <param name="Importance">How much it matters beside the others, not negative.</param>
public sealed record PlacedComponent(UprightCylinder Shape, double Importance);

namespace StudioCalc.Maths;

/// <summary>What helps where <see cref="Placement"/> does not hold the main component, each priced by choosing again.</summary>
public static class PlacementRemedies
{
    /// <summary>The remedies, empty when nothing stands in the way. A wider frame tells the lens as focused on the plane through
    /// the aim point.</summary>
    /// <param name="input">What focus is placed on.</param>
    /// <param name="outcome">What came of it.</param>
    /// <param name="wavelengthUm">Wavelength for diffraction in a stack, above 0. [µm]</param>
    public static IReadOnlyList<DepthRemedy> For(PlacementInput input, PlacementOutcome outcome, double wavelengthUm)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(outcome);
        if (outcome.Obstacle == DepthObstacle.None)
        {
            return [];
        }

        var points = input.PointsOf(input.Components[input.Main]);
        IEnumerable<DepthRemedy> closed = Closed(input, points) is { } fNumber ? [new(DepthRemedyKind.CloseAperture, fNumber)] : [];
        return
        [
            .. closed,
            .. DepthRemedies.For(points, input.PermittedBlurMm, input.Choice, wavelengthUm).Select(remedy => FromAim(input, remedy)),
        ];
    }

    private static double? Closed(PlacementInput input, DepthPoints points) => input.FNumber is null
        ? null
        : new ApertureChoice(input.Range.Settable(), null).Widest(TwoPointFocus.Between(points), input.PermittedBlurMm);

    private static DepthRemedy FromAim(PlacementInput input, DepthRemedy remedy) => remedy.CameraBackMm is { } back
        ? remedy with { Lens = input.Aim.RefocusedAt(input.Aim.FromEntrancePupilMm + back) }
        : remedy;
}

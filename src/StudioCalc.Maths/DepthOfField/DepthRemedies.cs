namespace StudioCalc.Maths;

/// <summary>Something that makes a depth hold.</summary>
public enum DepthRemedyKind
{
    /// <summary>Frame wider, from further away.</summary>
    FrameWider,

    /// <summary>Take a focus stack.</summary>
    Stack,

    /// <summary>Let more blur pass.</summary>
    PermitMoreBlur,

    /// <summary>Hold less depth.</summary>
    HoldLessDepth,

    /// <summary>Close the given aperture.</summary>
    CloseAperture,
}

/// <summary>A remedy, and what it takes.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="FNumber">The set f-number that goes with it.</param>
public sealed record DepthRemedy(DepthRemedyKind Kind, double FNumber)
{
    /// <summary>For a wider frame: how much further away the camera stands. [mm]</summary>
    public double? CameraBackMm { get; init; }

    /// <summary>For a wider frame: the lens from there, focused on the plane about which the points were told, or between
    /// them.</summary>
    public LensFocus? Lens { get; init; }

    /// <summary>For a stack: its frames.</summary>
    public int? Frames { get; init; }

    /// <summary>For more blur: the least that must be permitted. [mm]</summary>
    public double? PermittedBlurMm { get; init; }

    /// <summary>For less depth: the depth that holds. [mm]</summary>
    public double? DepthMm { get; init; }
}

/// <summary>What helps where no aperture to choose from holds two points. Each is priced by focusing and choosing again with it,
/// so that a mark or limit of the lens holds the points afterwards.</summary>
/// <remarks>Distance and depth are halved in towards the point where the points just hold, from the side that holds. Focal length
/// is kept, so a lens that focuses inside needs a little less.</remarks>
public static class DepthRemedies
{
    /// <summary>Greatest distance of a point after a remedy. [mm]</summary>
    private const double FurthestMm = 1e6;

    /// <summary>Blur that may be permitted at most. [mm]</summary>
    private const double MostBlurMm = 1;

    // So that a remedy holds in spite of rounding when it is sent back.
    private const double Margin = 1 - 2e-9;

    private const int Halvings = 60;

    /// <summary>More frames are no remedy.</summary>
    public const int MostFrames = 500;

    /// <summary>Depth that is still told apart from none. [mm]</summary>
    public const double LeastDepthMm = 0.001;

    /// <summary>The remedies; the stack is by focus ring, the near point its front, at the aperture that takes the fewest frames.</summary>
    /// <param name="points">The points, which do not hold.</param>
    /// <param name="permittedBlurMm">Permitted blur, above 0. [mm]</param>
    /// <param name="choice">The apertures to choose from.</param>
    /// <param name="wavelengthUm">Wavelength for diffraction in a stack, above 0. [µm]</param>
    public static IReadOnlyList<DepthRemedy> For(
        DepthPoints points, double permittedBlurMm, ApertureChoice choice, double wavelengthUm)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(choice);
        var focus = TwoPointFocus.Between(points) ?? throw new ArgumentException("No lens focuses between the points.", nameof(points));
        IEnumerable<DepthRemedy?> remedies =
        [
            Wider(points, permittedBlurMm * Margin, choice),
            Stack(focus, permittedBlurMm, choice.FNumbers, wavelengthUm),
            MoreBlur(focus, choice),
            LessDepth(points, focus, permittedBlurMm * Margin, choice),
        ];
        return [.. remedies.OfType<DepthRemedy>()];
    }

    private static DepthRemedy? Wider(DepthPoints points, double permittedBlurMm, ApertureChoice choice)
    {
        var (near, far) = (0.0, FurthestMm - points.FarMm);
        if (far <= 0 || !Holds(far))
        {
            return null;
        }

        for (var i = 0; i < Halvings; i++)
        {
            var middle = (near + far) / 2;
            (near, far) = Holds(middle) ? (near, middle) : (middle, far);
        }

        var focus = TwoPointFocus.Between(points.Moved(far))!;
        return new(DepthRemedyKind.FrameWider, choice.Widest(focus, permittedBlurMm)!.Value)
        {
            CameraBackMm = far,
            Lens = points.PlaneMm is { } plane ? focus.Lens.RefocusedAt(plane + far) : focus.Lens,
        };

        bool Holds(double back) => choice.Widest(TwoPointFocus.Between(points.Moved(back)), permittedBlurMm) is not null;
    }

    private static DepthRemedy? Stack(TwoPointFocus focus, double permittedBlurMm, IReadOnlyList<double> fNumbers, double wavelengthUm)
    {
        var input = new StackInput(
            focus.Lens.RefocusedAt(focus.NearMm), fNumbers[0], permittedBlurMm, focus.FarMm - focus.NearMm, StackInput.UsualOverlapShare, StackMethod.FocusRing)
        {
            WavelengthUm = wavelengthUm,
        };
        if (StackAperture.Deepest(input, fNumbers) is not { } deepest)
        {
            return null;
        }

        var none = default(NoTrail);
        var stack = StackFrames.Plan(input with { FNumber = deepest }, MostFrames, ref none);
        return stack.IsWhole ? new(DepthRemedyKind.Stack, deepest) { Frames = stack.Frames.Count } : null;
    }

    private static DepthRemedy? MoreBlur(TwoPointFocus focus, ApertureChoice choice)
    {
        var fNumber = choice.LeastBlur(focus);
        return choice.BlurMm(focus, fNumber) is var blur && blur <= MostBlurMm
            ? new(DepthRemedyKind.PermitMoreBlur, fNumber) { PermittedBlurMm = blur }
            : null;
    }

    private static DepthRemedy? LessDepth(DepthPoints points, TwoPointFocus focus, double permittedBlurMm, ApertureChoice choice)
    {
        var plane = points.PlaneMm ?? (points.FromSensor ? focus.Lens.FromSensorMm : focus.Lens.FromEntrancePupilMm);
        var (less, more) = (0.0, 1.0);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (less + more) / 2;
            (less, more) = Holds(middle) ? (middle, more) : (less, middle);
        }

        var left = points.Shrunk(less, plane);
        return left.DepthMm < LeastDepthMm || choice.Widest(TwoPointFocus.Between(left), permittedBlurMm) is not { } fNumber
            ? null
            : new(DepthRemedyKind.HoldLessDepth, fNumber) { DepthMm = left.DepthMm };

        bool Holds(double share) => choice.Widest(TwoPointFocus.Between(points.Shrunk(share, plane)), permittedBlurMm) is not null;
    }
}

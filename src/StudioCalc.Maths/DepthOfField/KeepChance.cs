using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The chance that a frame is sharp.</summary>
/// <param name="Keep">The chance P.</param>
/// <param name="Miss">1 - P, with all its figures where P is close to 1.</param>
/// <remarks>
/// <code>
/// P = Phi((far - b) / s) - Phi((-near - b) / s)              (62)
/// k = max(1, ceil((2 z(C) s - D) / (0.8 D)) + 1)             (63)
/// </code>
/// <para>near, far: the sharp zone. b, s: bias and spread of focus. Phi: the standard normal distribution. k: frames of a bracket,
/// each a fifth over the one before, that covers the share C of all errors about their middle; D = near + far. Both tails count
/// for themselves, as the zone is not symmetrical. Source: the normal distribution; (63) derived in
/// docs/models/depth-of-field.md.</para>
/// </remarks>
public readonly record struct KeepChance(double Keep, double Miss)
{
    /// <summary>The most frames of a bracket that are told.</summary>
    public const int MostBracketFrames = 10000;

    private const string AnswerField = "bracket_frames";

    /// <summary>The chance, certain to miss or keep included.</summary>
    /// <param name="nearMm">Sharp depth in front of the focused plane, above 0. [mm]</param>
    /// <param name="farMm">Sharp depth behind it, above 0; may be infinite. [mm]</param>
    /// <param name="error">How focus scatters.</param>
    public static KeepChance Of(double nearMm, double farMm, FocusError error)
    {
        ArgumentNullException.ThrowIfNull(error);
        var low = (-Guard.Positive(nearMm) - error.BiasMm) / Guard.Positive(error.SpreadMm);
        var high = (farMm - error.BiasMm) / error.SpreadMm;
        return new(Normal.Between(low, high), Min(1, Normal.Below(low) + Normal.Below(-high)));
    }

    /// <summary>The chance from how far focus may slip, without bias. A slip below 0 tells how far focus is out already. (62)</summary>
    /// <param name="forwardMm">How far focus may slip towards the camera. [mm]</param>
    /// <param name="backMm">How far it may slip away from it; may be infinite. [mm]</param>
    /// <param name="spreadMm">Spread of focus s, above 0. [mm]</param>
    public static KeepChance OfSlips(double forwardMm, double backMm, double spreadMm)
    {
        var (low, high) = (-forwardMm / Guard.Positive(spreadMm), backMm / spreadMm);
        return high <= low ? new(0, 1) : new(Normal.Between(low, high), Min(1, Normal.Below(low) + Normal.Below(-high)));
    }

    /// <summary>The same, and follows the sum. (62)</summary>
    /// <param name="nearMm">Sharp depth in front of the focused plane, above 0. [mm]</param>
    /// <param name="farMm">Sharp depth behind it, above 0; may be infinite. [mm]</param>
    /// <param name="error">How focus scatters.</param>
    /// <param name="trail">Follows the sum; it must hold s already.</param>
    public static KeepChance Of<TTrail>(double nearMm, double farMm, FocusError error, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var chance = Of(nearMm, farMm, error);
        var near = trail.Given("near", nearMm, "mm", "sharp depth in front", "near_depth_mm");
        var b = trail.Given("b", error.BiasMm, "mm", "bias_mm, 0 without one");
        var s = error.SpreadMm;
        var low = trail.Let("low", (-near - b) / s, "", "depth of field (62)");
        trail.Given("Pl", Normal.Below(low), "", "normal distribution below low");
        if (double.IsInfinity(farMm))
        {
            trail.Let("P", chance.Keep, "", "depth of field (62), the far limit is infinite", "keep_chance", "1 - Pl");
            return chance;
        }

        var far = trail.Given("far", farMm, "mm", "sharp depth behind", "far_depth_mm");
        var high = trail.Let("high", (far - b) / s, "", "depth of field (62)");
        trail.Given("Ph", Normal.Below(high), "", "normal distribution below high");
        trail.Let("P", chance.Keep, "", "depth of field (62)", "keep_chance", "Ph - Pl");
        return chance;
    }

    /// <summary>Frames of a focus bracket of which one is sharp with a confidence; infinite for a zone that reaches to infinity and
    /// does not hold enough in front, for which (63) has no middle. (63)</summary>
    /// <param name="nearMm">Sharp depth in front of the focused plane, above 0. [mm]</param>
    /// <param name="farMm">Sharp depth behind it, above 0; may be infinite. [mm]</param>
    /// <param name="spreadMm">Spread of focus s, above 0. [mm]</param>
    /// <param name="confidence">Confidence C, above 0 and below 1.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double BracketFrames<TTrail>(
        double nearMm, double farMm, double spreadMm, double confidence, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (double.IsInfinity(farMm))
        {
            return Of(nearMm, farMm, new(spreadMm, 0)).Keep >= confidence
                ? trail.Given("bracket", 1, "", "a frame that reaches to infinity", AnswerField)
                : double.PositiveInfinity;
        }

        var near = trail.Given("near", Guard.Positive(nearMm), "mm", "sharp depth in front");
        var far = trail.Given("far", Guard.Positive(farMm), "mm", "sharp depth behind");
        var s = trail.Given("s", Guard.Positive(spreadMm), "mm", "depth of field (61)");
        var zc = trail.Given("zc", Normal.HalfWidth(confidence), "", "half width of the normal distribution that holds confidence_share");
        var D = trail.Let("D", near + far, "mm", "sharp depth");
        var frames = Max(1, Ceiling((2 * zc * s - D) / (0.8 * D) - 0.000000001) + 1);
        return trail.Let(
            "bracket",
            frames,
            "",
            "depth of field (63)",
            frames <= MostBracketFrames ? AnswerField : "",
            "Max(1, Ceiling((2 * zc * s - D) / (0.8 * D) - 0.000000001) + 1)");
    }

    /// <summary>Depth that the zone lacks, in front and behind in the same proportion, for one frame to be sharp with a confidence;
    /// 0 when it is. [mm]</summary>
    /// <param name="nearMm">Sharp depth in front of the focused plane, above 0. [mm]</param>
    /// <param name="farMm">Sharp depth behind it, above 0; may be infinite. [mm]</param>
    /// <param name="error">How focus scatters.</param>
    /// <param name="confidence">Confidence, above 0 and below 1.</param>
    public static double LackingDepthMm(double nearMm, double farMm, FocusError error, double confidence)
    {
        var (low, high) = (1.0, 1.0);
        while (Of(high * nearMm, high * farMm, error).Keep < confidence)
        {
            (low, high) = (high, 2 * high);
        }

        while (high - low > high * 1e-12)
        {
            var middle = (low + high) / 2;
            (low, high) = Of(middle * nearMm, middle * farMm, error).Keep < confidence ? (middle, high) : (low, middle);
        }

        return (high - 1) * (double.IsInfinity(farMm) ? nearMm : nearMm + farMm);
    }
}

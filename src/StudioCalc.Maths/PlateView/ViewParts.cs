using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What is measured of a view, and the parts of its score, each from 0 to 1.</summary>
/// <remarks>
/// <code>
/// D  = df - dn                              depth of the dish along the axis          (40)
/// p1 = 1 - (dm - dn) / D                    the main component lies in front          (41)
/// p2 = min(1, Am / Ao)                      it is the largest in the frame            (42)
/// p3 = sum(i V) / sum(i)                    components show                           (43)
/// p4 = mean of (11)                         insides are open                          (44)
/// p5 = min(1, T / D)                        the depth of the dish fits                (45)
/// score = sum(w p) / sum(w)                                                           (46)
/// </code>
/// <para>dn, df: depths of the nearest and the farthest part of any component; dm: of the main one's nearest part. Am, Ao: area in
/// the frame that shows of the main component and of the largest other one. V, i: share of a component's outline that shows, and
/// its importance. T: depth of field. w: weights. A single component has p1 and p2 of 1, as far as it shows in the frame at all.
/// Source: own choice, in docs/models/plate-view.md.</para>
/// </remarks>
public readonly record struct ViewParts
{
    /// <summary>Depth dn of the nearest part of any component behind the plane through the aim point. [mm]</summary>
    public required double NearestMm { get; init; }

    /// <summary>Depth df of the farthest part of any component. [mm]</summary>
    public required double FarthestMm { get; init; }

    /// <summary>Depth dm of the nearest part of the main component. [mm]</summary>
    public required double MainNearestMm { get; init; }

    /// <summary>Area Am of the main component that shows in the frame, in the plane through the aim point. [mm²]</summary>
    public required double MainMm2 { get; init; }

    /// <summary>Area Ao of the largest other one that shows there; null without another. [mm²]</summary>
    public required double? OtherMm2 { get; init; }

    /// <summary>Sum of shares by importance.</summary>
    public required double Shown { get; init; }

    /// <summary>Sum of importances, positive.</summary>
    public required double ToShow { get; init; }

    /// <summary>Mean share of the content of vessels that shows over their own rims.</summary>
    public required double Open { get; init; }

    /// <summary>Depth of field T; may be infinite. [mm]</summary>
    public required double SharpMm { get; init; }

    /// <summary>Share that shows of the component that shows least, of those that must.</summary>
    public required double LeastShare { get; init; }

    /// <summary>That component.</summary>
    public required int Least { get; init; }

    /// <summary>The same share at the upper end of its uncertainty, of the component of which that is least.</summary>
    public required double HighShare { get; init; }

    /// <summary>The component of which most lies outside the frame, of those that must show.</summary>
    public required int MostOutside { get; init; }

    /// <summary>Share of its outline that lies outside.</summary>
    public required double OutsideShare { get; init; }

    /// <summary>Depth D of the dish along the axis. (40) [mm]</summary>
    public double DepthMm => FarthestMm - NearestMm;

    /// <summary>The parts with their score.</summary>
    /// <param name="weights">Their weights, not all 0; 0 for parts without a subject.</param>
    public ViewScore Score(ViewWeights weights)
    {
        var none = default(NoTrail);
        return Score(weights, "", ref none);
    }

    /// <summary>The same, and follows the sum.</summary>
    /// <param name="weights">Their weights, not all 0; 0 for parts without a subject.</param>
    /// <param name="field">The answer message that holds the view, with a point at its end.</param>
    /// <param name="trail">Follows the sum.</param>
    public ViewScore Score<TTrail>(ViewWeights weights, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var dn = trail.Given("dn", NearestMm, "mm", "nearest part of any component behind the aim point");
        var df = trail.Given("df", FarthestMm, "mm", "farthest part of any component");
        var dm = trail.Given("dm", MainNearestMm, "mm", "nearest part of the main component");
        var D = trail.Let("D", df - dn, "mm", "plate view (40)", field + "axis_depth_mm");
        var p1 = trail.Let("p1", 1 - (dm - dn) / D, "", "plate view (41)");
        var p2 = Large(ref trail);
        var shown = trail.Given("shown", Shown, "", "sum of importance times visible share");
        var whole = trail.Given("whole", ToShow, "", "sum of importances");
        var p3 = trail.Let("p3", shown / whole, "", "plate view (43)");
        var p4 = trail.Given("p4", Open, "", "mean share of contents that shows over their rims, plate view (44)");
        var p5 = 1.0;
        if (double.IsFinite(SharpMm))
        {
            var T = trail.Given("T", SharpMm, "mm", "depth of field (8) and (9)");
            p5 = trail.Let("p5", Min(1, T / D), "", "plate view (45)");
        }
        else
        {
            trail.Given("p5", p5, "", "depth of field without end, or not asked for");
        }

        var w1 = trail.Given("w1", weights.MainInFront, "", "weight of p1");
        var w2 = trail.Given("w2", weights.MainLarge, "", "weight of p2");
        var w3 = trail.Given("w3", weights.ComponentsShow, "", "weight of p3");
        var w4 = trail.Given("w4", weights.InsidesOpen, "", "weight of p4; 0 without vessels");
        var w5 = trail.Given("w5", weights.DepthFits, "", "weight of p5; 0 without sharpness");
        var s = trail.Let(
            "s", (w1 * p1 + w2 * p2 + w3 * p3 + w4 * p4 + w5 * p5) / (w1 + w2 + w3 + w4 + w5), "", "plate view (46)", field + "score");
        return new(p1, p2, p3, p4, p5, s);
    }

    private double Large<TTrail>(ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (OtherMm2 is not > 0 || MainMm2 <= 0)
        {
            return trail.Given("p2", MainMm2 > 0 ? 1 : 0, "", MainMm2 > 0 ? "no other component shows in the frame" : "nothing of the main component shows in the frame");
        }

        var Am = trail.Given("Am", MainMm2, "mm²", "area of the main component that shows in the frame");
        var Ao = trail.Given("Ao", OtherMm2.Value, "mm²", "area of the largest other one that shows there");
        return trail.Let("p2", Min(1, Am / Ao), "", "plate view (42)");
    }
}

/// <summary>The parts of a score, and the score, each from 0 to 1.</summary>
/// <param name="MainInFront">The main component lies in front. (41)</param>
/// <param name="MainLarge">It is large in the frame. (42)</param>
/// <param name="ComponentsShow">Components show. (43)</param>
/// <param name="InsidesOpen">Insides are open. (44)</param>
/// <param name="DepthFits">The depth fits. (45)</param>
/// <param name="Total">The score. (46)</param>
public readonly record struct ViewScore(
    double MainInFront, double MainLarge, double ComponentsShow, double InsidesOpen, double DepthFits, double Total);

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>What shows of a component, as counts of sight lines.</summary>
/// <param name="Alone">Lines that meet it when it stands alone.</param>
/// <param name="Seen">Lines on which nothing else comes first.</param>
/// <param name="SeenInFrame">Of those, lines within the frame.</param>
/// <param name="Outside">Lines of the component alone that lie outside the frame.</param>
/// <param name="SumRightMm">Sum of the places of lines seen, to the right. [mm]</param>
/// <param name="SumUpMm">Sum of their places upwards. [mm]</param>
/// <param name="CellMm2">Area of the picture that a line stands for, in the plane through the aim point. [mm²]</param>
public readonly record struct SolidView(
    int Alone, int Seen, int SeenInFrame, int Outside, double SumRightMm, double SumUpMm, double CellMm2)
{
    /// <summary>Share V of its outline that shows, from 0 to 1. (12)</summary>
    public double Share => Alone > 0 ? (double)Seen / Alone : 0;

    /// <summary>Share of its outline that lies outside the frame.</summary>
    public double OutsideShare => Alone > 0 ? (double)Outside / Alone : 0;

    /// <summary>A share of what is counted, with its sum; 0 of nothing.</summary>
    /// <param name="seen">How many show.</param>
    /// <param name="count">Of how many.</param>
    /// <param name="what">What is counted.</param>
    /// <param name="field">The answer field that it equals.</param>
    /// <param name="trail">Follows the sum.</param>
    public static double ShareOf<TTrail>(int seen, int count, string what, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (count == 0)
        {
            return 0;
        }

        var alone = trail.Given("alone", count, "", $"{what} that would show, counted");
        var shown = trail.Given("shown", seen, "", $"{what} that show, counted");
        return trail.Let("V", shown / alone, "", "plate view (12)", field);
    }

    /// <summary>How far that share may be off. (14)</summary>
    public double Uncertainty => UncertaintyOf(Share, Alone);

    /// <summary>Area that shows within the frame, in the plane through the aim point. [mm²]</summary>
    public double InFrameMm2 => SeenInFrame * CellMm2;

    /// <summary>How far a share counted over some lines may be off. (14)</summary>
    /// <param name="share">The share.</param>
    /// <param name="count">How many lines were counted.</param>
    public static double UncertaintyOf(double share, int count) =>
        count > 0 ? Sqrt(share * (1 - share) / count) + 0.5 / count : 1;
}

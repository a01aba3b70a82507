using static System.Math;

namespace StudioCalc.Maths;

/// <summary>How far all heads of a fill can be turned together.</summary>
internal readonly struct FlashHeads
{
    private const double Rounding = 1e-9;

    public FlashHeads(BalanceInput input)
    {
        var first = new FlashHead(input.PowerBelowFullStops, input.LowestPowerBelowFullStops, input.PowerScale);
        var (perStop, up, down) = (first.PowerScale.StepsPerStop(), Up(first), Down(first));
        for (var i = 0; i < input.FurtherHeads.Count; i++)
        {
            var head = input.FurtherHeads[i];
            perStop = Shared(perStop, head.PowerScale.StepsPerStop());
            (up, down) = (Min(up, Up(head)), Min(down, Down(head)));
        }

        StepsPerStop = perStop;
        MostSteps = Floor(up * perStop + Rounding);
        LeastSteps = -Floor(down * perStop + Rounding);
    }

    /// <summary>Steps to a stop that every head has: tenths and thirds share whole stops only.</summary>
    public int StepsPerStop { get; }

    /// <summary>Steps up until the first head is at full power.</summary>
    public double MostSteps { get; }

    /// <summary>Steps down, not above 0, until the first head is at its lowest power.</summary>
    public double LeastSteps { get; }

    private static double Up(FlashHead head) => head.PowerBelowFullStops;

    private static double Down(FlashHead head) => head.LowestPowerBelowFullStops - head.PowerBelowFullStops;

    private static int Shared(int a, int b) => b == 0 ? a : Shared(b, a % b);
}

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Several flashes that light one surface.</summary>
/// <remarks>
/// <code>
/// F = log2(sum of 2^Fi)                                           (30)
/// </code>
/// <para>Fi: flash value of each alone, F: of all together, at ISO 100. Two equal ones are one stop over each, three 1.58,
/// four 2. Source: light adds as light; articles on several flashes.</para>
/// </remarks>
public static class FlashSum
{
    /// <summary>All flashes together. (30)</summary>
    /// <param name="flashes">Each alone, at least one.</param>
    /// <param name="trail">Follows the sum.</param>
    public static FlashLevel Of<TTrail>(ReadOnlySpan<FlashLevel> flashes, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentOutOfRangeException.ThrowIfZero(flashes.Length, nameof(flashes));
        if (flashes.Length == 1)
        {
            return flashes[0];
        }

        trail.Section("flashes together");
        var sum = trail.Given("sum", 0, "", "nothing added yet");
        foreach (var flash in flashes)
        {
            var F = trail.Given("F", flash.FlashValueIso100Stops, "stops", "one flash, as above");
            sum = trail.Let("sum", sum + Pow(2, F), "", "lighting ratio (30)");
        }

        return new(trail.Let("F", Log2(sum), "stops", "lighting ratio (30)"));
    }
}

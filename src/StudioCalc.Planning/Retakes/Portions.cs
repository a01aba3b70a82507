using StudioCalc.Maths;

namespace StudioCalc.Planning;

/// <summary>What to order of a dish.</summary>
public sealed record PortionsInput
{
    /// <summary>Chance p that one plate yields a wanted picture, above 0 and not above 1.</summary>
    public required double PlateChance { get; init; }

    /// <summary>Pictures k that need a plate of their own, 1 or more.</summary>
    public int Pictures { get; init; } = 1;

    /// <summary>Wanted confidence C, above 0 and below 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>Stand-in plates, 0 or more.</summary>
    public int StandIns { get; init; } = 1;
}

/// <summary>Plates of a dish to order.</summary>
/// <remarks>
/// <code>
/// h = least i with P(Bin(i, p) >= k) >= C                         (50)
/// spare = h - k            plates = h + standins                   (51)
/// </code>
/// <para>Plates are taken to succeed or fail each for itself: a dish that fails for its recipe fails every time. Source: the binomial
/// distribution.</para>
/// </remarks>
/// <param name="Fresh">Plates to be photographed h, spares included.</param>
/// <param name="Spare">Plates over what is needed if none fails.</param>
/// <param name="Plates">All plates of the dish, stand-ins included.</param>
/// <param name="Reached">Chance that the pictures are had with them.</param>
public sealed record Portions(int Fresh, int Spare, int Plates, double Reached)
{
    /// <summary>The most plates of a dish that are told.</summary>
    public const int MostPlates = 1000;

    /// <summary>Evaluates a dish; null where more than <see cref="MostPlates"/> were needed.</summary>
    /// <param name="input">What is wanted.</param>
    /// <param name="trail">Follows the sum.</param>
    public static Portions? Evaluate<TTrail>(PortionsInput input, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(input);
        var chance = Guard.Positive(Binomial.Share(input.PlateChance));
        if (Binomial.FewestTries(chance, input.Pictures, input.Confidence, MostPlates) is not { } fresh)
        {
            return null;
        }

        trail.Section("portions");
        var reached = Binomial.Split(fresh, chance, input.Pictures).AtLeast;
        trail.Given("p", chance, "", "chance that a plate yields the picture");
        trail.Given("C", input.Confidence, "", "wanted confidence");
        var k = trail.Given("k", Guard.Positive(input.Pictures), "", "pictures with a plate of their own");
        var standins = trail.Given("standins", Guard.NotNegative(input.StandIns), "", "stand-in plates");
        var h = trail.Given("h", fresh, "", "shoot plan (50), binomial distribution", "fresh_plates");
        trail.Given("reached", reached, "", "binomial distribution: k or more of h", "reached_chance");
        trail.Let("spare", h - k, "", "shoot plan (51)", "spare_plates");
        var plates = trail.Let("plates", h + standins, "", "shoot plan (51)", "plates");
        return new(fresh, fresh - input.Pictures, (int)plates, reached);
    }
}

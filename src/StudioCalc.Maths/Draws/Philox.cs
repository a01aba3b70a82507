namespace StudioCalc.Maths;

/// <summary>Random numbers by address: the same key and counter give the same numbers, on any machine and in any order.</summary>
/// <remarks>Philox 4x32-10. Source: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11 (2011);
/// constants from memory, held by the paper's test vectors.</remarks>
public static class Philox
{
    private const uint FirstMultiplier = 0xD2511F53;
    private const uint SecondMultiplier = 0xCD9E8D57;
    private const uint FirstWeyl = 0x9E3779B9;
    private const uint SecondWeyl = 0xBB67AE85;

    /// <summary>Four random words.</summary>
    /// <param name="key">The key: a seed, and what the numbers are for.</param>
    /// <param name="counter">The address of the numbers.</param>
    public static (uint First, uint Second, uint Third, uint Fourth) Words(
        (uint First, uint Second) key, (uint First, uint Second, uint Third, uint Fourth) counter)
    {
        var (k0, k1) = key;
        var (c0, c1, c2, c3) = counter;
        for (var round = 0; round < 10; round++)
        {
            var (product0, product1) = ((ulong)FirstMultiplier * c0, (ulong)SecondMultiplier * c2);
            (c0, c1, c2, c3) = ((uint)(product1 >> 32) ^ c1 ^ k0, (uint)product1, (uint)(product0 >> 32) ^ c3 ^ k1, (uint)product0);
            (k0, k1) = (unchecked(k0 + FirstWeyl), unchecked(k1 + SecondWeyl));
        }

        return (c0, c1, c2, c3);
    }

    /// <summary>Two numbers from 0 up to, but not, 1, each with 53 random bits.</summary>
    /// <param name="key">The key: a seed, and what the numbers are for.</param>
    /// <param name="counter">The address of the numbers.</param>
    public static (double First, double Second) Uniform(
        (uint First, uint Second) key, (uint First, uint Second, uint Third, uint Fourth) counter)
    {
        var (a, b, c, d) = Words(key, counter);
        return (Fraction(a, b), Fraction(c, d));
    }

    private static double Fraction(uint high, uint low) => ((((ulong)high << 32) | low) >> 11) * (1.0 / (1UL << 53));
}

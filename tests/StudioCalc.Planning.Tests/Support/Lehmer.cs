namespace StudioCalc.Planning.Tests;

/// <summary>The generator of the classic instances: Bratley, Fox and Schrage (1983).</summary>
internal sealed class Lehmer(long seed)
{
    private const long Modulus = 2147483647;

    private long _x = seed;

    public int Next(int low, int high)
    {
        _x = _x * 16807 % Modulus;
        return low + (int)((double)_x / Modulus * (high - low + 1));
    }
}

namespace StudioCalc.Planning;

/// <summary>What an order costs; the first that differs decides.</summary>
/// <param name="LeftOut">Blocks that find no place in the day.</param>
/// <param name="ExcessMs">What the components wait beyond their budgets, together. [ms]</param>
/// <param name="FinishMs">The end of the last work. [ms]</param>
/// <param name="SetupMs">All setups of the set. [ms]</param>
public readonly record struct OrderCost(int LeftOut, long ExcessMs, long FinishMs, long SetupMs) : IComparable<OrderCost>
{
    /// <inheritdoc/>
    public int CompareTo(OrderCost other) =>
        LeftOut != other.LeftOut ? LeftOut.CompareTo(other.LeftOut)
        : ExcessMs != other.ExcessMs ? ExcessMs.CompareTo(other.ExcessMs)
        : FinishMs != other.FinishMs ? FinishMs.CompareTo(other.FinishMs)
        : SetupMs.CompareTo(other.SetupMs);

    /// <summary>Whether one is better than another.</summary>
    public static bool operator <(OrderCost one, OrderCost other) => one.CompareTo(other) < 0;

    /// <summary>Whether one is worse than another.</summary>
    public static bool operator >(OrderCost one, OrderCost other) => one.CompareTo(other) > 0;

    /// <summary>Whether one is no worse than another.</summary>
    public static bool operator <=(OrderCost one, OrderCost other) => one.CompareTo(other) <= 0;

    /// <summary>Whether one is no better than another.</summary>
    public static bool operator >=(OrderCost one, OrderCost other) => one.CompareTo(other) >= 0;
}

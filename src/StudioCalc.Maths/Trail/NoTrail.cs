namespace StudioCalc.Maths;

/// <summary>The trail that notes nothing and costs nothing.</summary>
public readonly struct NoTrail : ITrail, IEquatable<NoTrail>
{
    /// <inheritdoc/>
    public void Section(string name)
    {
    }

    /// <inheritdoc/>
    public double Given(string symbol, double value, string unit, string source, string answerField = "") => value;

    /// <inheritdoc/>
    public double Let(
        string symbol, double value, string unit, string source, string answerField = "", string expression = "") => value;

    /// <inheritdoc/>
    public bool Equals(NoTrail other) => true;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is NoTrail;

    /// <inheritdoc/>
    public override int GetHashCode() => 0;

    /// <summary>All are equal.</summary>
    public static bool operator ==(NoTrail left, NoTrail right) => true;

    /// <summary>All are equal.</summary>
    public static bool operator !=(NoTrail left, NoTrail right) => false;
}

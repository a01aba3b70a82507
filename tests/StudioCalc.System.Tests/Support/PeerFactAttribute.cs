namespace StudioCalc.System.Tests;

/// <summary>A test that is skipped, with the reason, on a machine without the peer.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class PeerFactAttribute : FactAttribute
{
    public PeerFactAttribute(params Peer[] peers) => Skip = Machine.Lacks(peers);
}

/// <summary>The same for a test with data.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class PeerTheoryAttribute : TheoryAttribute
{
    public PeerTheoryAttribute(params Peer[] peers) => Skip = Machine.Lacks(peers);
}

namespace StudioCalc.System.Tests;

/// <summary>The lock file of the Node.js packages.</summary>
public sealed class PackageLockTests
{
    [Fact]
    public void Lock_NamesNoRegistry_AndHoldsEveryPackageToItsContent()
    {
        var text = File.ReadAllText(Tool.Script("node", "package-lock.json"));

        Assert.Contains("\"integrity\": \"sha512-", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\"resolved\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain("://", text, StringComparison.Ordinal);
    }
}

using System.Text.RegularExpressions;
using Google.Protobuf;
using StudioCalc.Tests;

namespace StudioCalc.Contracts.Tests;

public sealed partial class ContractTests
{
    [Fact]
    public void Files_AreAllThatStandInTheFolder() => Assert.Equal(
        Directory.EnumerateFiles(RepositoryRoot.At("protos", "studiocalc"), "*.proto", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(RepositoryRoot.At("protos"), file).Replace('\\', '/')).Order(StringComparer.Ordinal),
        Contract.Files.Select(file => file.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void EveryCallThatTakesValues_HasASampleThatItsReaderTakes()
    {
        foreach (var method in Contract.Services.SelectMany(service => service.Methods)
            .Where(method => method.InputType.Fields.InDeclarationOrder().Count > 0))
        {
            var file = RepositoryRoot.At("docs", "examples", Capital().Replace(method.Name, "-$0").ToLowerInvariant() + ".json");
            Assert.True(File.Exists(file), file);
            var request = (IMessage)Activator.CreateInstance(method.InputType.ClrType)!;
            var violations = new Violations();
            ContractJson.Read(request, File.ReadAllBytes(file), violations);
            Assert.Empty(violations.List);
            Assert.True(request.CalculateSize() > 0, file);
        }
    }

    [Fact]
    public void FullMethodName_IsTheOneOfTheGeneratedClient() => Assert.Equal(
        "/studiocalc.v1.ExposureService/EvaluateExposure",
        Contract.FullMethodName(V1.ExposureReflection.Descriptor.Services[0].Methods[0]));

    [Fact]
    public void Comments_OfAWrappedComment_AreOneLine() => Assert.Equal(
        "A mark such as `1/60` or `30 s`, which stands for its exact value, here 1/64 s and 32 s. 1 to 16 characters; the `s` may be left out.",
        ContractComments.Of(V1.ShutterSpeed.Descriptor.FindFieldByName("mark")));

    [Fact]
    public void Comments_OfAnEnumValue_AreFound() =>
        Assert.Equal("Third stops.", ContractComments.Of(V1.CameraReflection.Descriptor.EnumTypes[0].FindValueByName("STOP_SCALE_THIRD")));

    [Fact]
    public void RefusalReasons_AllHaveNames()
    {
        foreach (var reason in Enum.GetValues<V1.RefusalReason>())
        {
            Assert.Matches("^[A-Z_]+$", Refusal.NameOf(reason));
        }
    }

    [GeneratedRegex("(?<!^)[A-Z]", RegexOptions.None, 1000)]
    private static partial Regex Capital();
}

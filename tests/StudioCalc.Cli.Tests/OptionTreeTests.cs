using Google.Protobuf.Reflection;

namespace StudioCalc.Cli.Tests;

public sealed class OptionTreeTests
{
    private static readonly string[] OfEveryCommand = ["--help", "-h", "-?", "--version"];

    public static TheoryData<string> Calls => [.. Tool.Calls.Select(call => call.Name)];

    [Theory]
    [MemberData(nameof(Calls))]
    public void Options_OfACall_HaveNamesThatNoOtherHas(string name)
    {
        var typed = All(name).Where(spec => spec.IsTyped).Select(spec => spec.Name);
        var builtIn = new BuiltIns(AnswerFiles.Of(Tool.Call(name))).All.SelectMany(option => option.Aliases.Append(option.Name));

        var twice = typed.Concat(builtIn).Concat(OfEveryCommand).GroupBy(option => option).Where(group => group.Count() > 1);

        Assert.Empty(twice.Select(group => group.Key));
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public void Options_OfACall_AreKebabPathsWithoutUnits(string name) => Assert.All(
        All(name),
        spec =>
        {
            Assert.Matches(@"^--[a-z0-9-]+(\.[a-z0-9-]+)*$", spec.Name);
            Assert.DoesNotContain(Fields.Suffixes, suffix =>
                spec.Field.FieldType == FieldType.Double && spec.Name.EndsWith("-" + suffix.Replace('_', '-'), StringComparison.Ordinal));
        });

    [Theory]
    [MemberData(nameof(Calls))]
    public void Options_OfACall_ReachEveryFieldOfItsRequest(string name)
    {
        var reached = All(name).Select(spec => spec.Field).ToHashSet();

        Assert.Empty(FieldsOf(Tool.Call(name).InputType).Except(reached).Select(field => field.FullName));
    }

    [Fact]
    public void Lists_OfMessages_AreCountedAsFarAsTheArgumentsMention()
    {
        var mentions = new Mentions(["--lights.1.name", "window", "--lights.3.reading.flash.exposure=2 lx s"]);

        var names = OptionTree.Of(Tool.Call("CombineReadings").InputType, mentions).Select(spec => spec.Name);

        Assert.Equal(["--lights.0", "--lights.1", "--lights.3", "--lights.4"], names.Where(option => option.StartsWith("--lights", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("flash-power")]
    [InlineData("Flash-Power")]
    [InlineData("BALANCE_VARIABLE_FLASH_POWER")]
    public void Enum_ByItsShortOrFullName_IsRead(string text) =>
        Assert.Equal(1, EnumText.Read(StudioCalc.V1.LightingRatioReflection.Descriptor.EnumTypes.Single(type => type.Name == "BalanceVariable"), text));

    private static IEnumerable<OptionSpec> All(string name) => OptionTree.Of(Tool.Call(name).InputType, Mentions.None).SelectMany(spec => spec.All);

    private static HashSet<FieldDescriptor> FieldsOf(MessageDescriptor message)
    {
        var found = new HashSet<FieldDescriptor>();
        var open = new Queue<MessageDescriptor>([message]);
        while (open.TryDequeue(out var next))
        {
            foreach (var field in next.Fields.InFieldNumberOrder().Where(found.Add).Where(field => !OptionTree.IsText(field)))
            {
                open.Enqueue(field.MessageType);
            }
        }

        return found;
    }
}

using Buf.Validate;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Type = Google.Protobuf.Reflection.FieldDescriptorProto.Types.Type;

namespace StudioCalc.Contracts.Tests;

/// <summary>A rule that the checks do not know stops the start: a small contract of one field is built for each.</summary>
public sealed class UnknownRuleTests
{
    private static readonly Dictionary<string, (Type Type, Buf.Validate.FieldRules Rules)> Unknown = new(StringComparer.Ordinal)
    {
        ["a pattern"] = (Type.String, new() { String = new() { Pattern = "a" } }),
        ["a well-known format"] = (Type.String, new() { String = new() { Email = true } }),
        ["a lower bound alone"] = (Type.Double, new() { Double = new() { Gte = 1 } }),
        ["an upper bound alone"] = (Type.Double, new() { Double = new() { Lt = 1 } }),
        ["finite"] = (Type.Double, new() { Double = new() { Finite = true } }),
        ["a constant"] = (Type.Double, new() { Double = new() { Const = 1 } }),
        ["a number not in a list"] = (Type.Int32, new() { Int32 = new() { NotIn = { 0 } } }),
        ["a number in a list"] = (Type.Uint32, new() { Uint32 = new() { In = { 1 } } }),
        ["an enum value other than 0 refused"] = (Type.Int32, new() { Enum = new() { NotIn = { 2 } } }),
        ["64 bits"] = (Type.Int64, new() { Int64 = new() { Gte = 1 } }),
        ["an expression"] = (Type.Double, new() { Cel = { new Rule { Id = "a", Expression = "true" } } }),
        ["ignored"] = (Type.Double, new() { Ignore = Ignore.Always }),
    };

    public static TheoryData<string> Names => [.. Unknown.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Of_AFieldWithAnUnknownRule_Throws(string what)
    {
        var (type, rules) = Unknown[what];
        var error = Assert.Throws<NotSupportedException>(() => Contracts.FieldRules.Of(Build(type, rules).Fields[1]));
        Assert.StartsWith("tiny.Message.field", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AFieldWithKnownRules_ReadsThem()
    {
        var rules = Contracts.FieldRules.Of(Build(
            Type.Double, new() { Required = true, Double = new() { Gt = 1, Lte = 2 } }).Fields[1]);
        Assert.Equal((true, 1.0, true, 2.0, false), (rules.Required, rules.Min, rules.MinOpen, rules.Max, rules.MaxOpen));
    }

    [Fact]
    public void RefuseMessageRules_AMessageWithAnExpression_Throws()
    {
        var plain = Build(Type.Double, new());
        Contracts.FieldRules.RefuseMessageRules(plain);
        var ruled = Build(Type.Double, new(), new() { Cel = { new Rule { Id = "a", Expression = "true" } } });
        Assert.Throws<NotSupportedException>(() => Contracts.FieldRules.RefuseMessageRules(ruled));
    }

    private static MessageDescriptor Build(Type type, Buf.Validate.FieldRules rules, MessageRules? messageRules = null)
    {
        var field = new FieldDescriptorProto
        {
            Name = "field",
            Number = 1,
            Type = type,
            Label = FieldDescriptorProto.Types.Label.Optional,
            Options = new(),
        };
        field.Options.SetExtension(ValidateExtensions.Field, rules);
        var message = new DescriptorProto { Name = "Message", Field = { field } };
        if (messageRules is not null)
        {
            message.Options = new();
            message.Options.SetExtension(ValidateExtensions.Message, messageRules);
        }

        var file = new FileDescriptorProto { Name = "tiny.proto", Package = "tiny", Syntax = "proto3", MessageType = { message } };
        return FileDescriptor.BuildFromByteStrings([file.ToByteString()], OwnExtensions())[0].MessageTypes[0];
    }

    private static ExtensionRegistry OwnExtensions() => [ValidateExtensions.Field, ValidateExtensions.Message];
}

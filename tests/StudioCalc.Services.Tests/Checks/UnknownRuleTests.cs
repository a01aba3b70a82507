using Buf.Validate;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Rules = StudioCalc.Contracts.FieldRules;

namespace StudioCalc.Services.Tests;

/// <summary>A rule that the checks do not know stops the start: a small contract of one field is built for each.</summary>
public sealed class UnknownRuleTests
{
    public static TheoryData<string, FieldDescriptorProto.Types.Type, FieldRules> Unknown => new()
    {
        { "a pattern", FieldDescriptorProto.Types.Type.String, new() { String = new() { Pattern = "a" } } },
        { "a well-known format", FieldDescriptorProto.Types.Type.String, new() { String = new() { Email = true } } },
        { "a lower bound alone", FieldDescriptorProto.Types.Type.Double, new() { Double = new() { Gte = 1 } } },
        { "an upper bound alone", FieldDescriptorProto.Types.Type.Double, new() { Double = new() { Lt = 1 } } },
        { "finite", FieldDescriptorProto.Types.Type.Double, new() { Double = new() { Finite = true } } },
        { "a constant", FieldDescriptorProto.Types.Type.Double, new() { Double = new() { Const = 1 } } },
        { "a number not in a list", FieldDescriptorProto.Types.Type.Int32, new() { Int32 = new() { NotIn = { 0 } } } },
        { "a number in a list", FieldDescriptorProto.Types.Type.Uint32, new() { Uint32 = new() { In = { 1 } } } },
        { "an enum value other than 0 refused", FieldDescriptorProto.Types.Type.Int32, new() { Enum = new() { NotIn = { 2 } } } },
        { "64 bits", FieldDescriptorProto.Types.Type.Int64, new() { Int64 = new() { Gte = 1 } } },
        { "an expression", FieldDescriptorProto.Types.Type.Double, new() { Cel = { new Rule { Id = "a", Expression = "true" } } } },
        { "ignored", FieldDescriptorProto.Types.Type.Double, new() { Ignore = Ignore.Always } },
    };

    [Theory]
    [MemberData(nameof(Unknown))]
    public void Of_AFieldWithAnUnknownRule_Throws(string what, FieldDescriptorProto.Types.Type type, FieldRules rules)
    {
        var error = Assert.Throws<NotSupportedException>(() => Rules.Of(Build(type, rules).Fields[1]));
        Assert.True(error.Message.StartsWith("tiny.Message.field", StringComparison.Ordinal), what);
    }

    [Fact]
    public void Of_AFieldWithKnownRules_ReadsThem()
    {
        var rules = Rules.Of(Build(
            FieldDescriptorProto.Types.Type.Double, new() { Required = true, Double = new() { Gt = 1, Lte = 2 } }).Fields[1]);
        Assert.Equal((true, 1.0, true, 2.0, false), (rules.Required, rules.Min, rules.MinOpen, rules.Max, rules.MaxOpen));
    }

    [Fact]
    public void RefuseMessageRules_AMessageWithAnExpression_Throws()
    {
        var plain = Build(FieldDescriptorProto.Types.Type.Double, new());
        Rules.RefuseMessageRules(plain);
        var ruled = Build(FieldDescriptorProto.Types.Type.Double, new(), new() { Cel = { new Rule { Id = "a", Expression = "true" } } });
        Assert.Throws<NotSupportedException>(() => Rules.RefuseMessageRules(ruled));
    }

    [Fact]
    public void BuildChecks_TheContract_HasNoUnknownRule() => ContractInterceptor.BuildChecks();

    private static MessageDescriptor Build(FieldDescriptorProto.Types.Type type, FieldRules rules, MessageRules? messageRules = null)
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

    // The contract's own copy of the annotations is internal, so that it can stand beside the one of this test.
    private static ExtensionRegistry OwnExtensions()
    {
        var own = typeof(Rules).Assembly.GetType("Buf.Validate.ValidateExtensions", throwOnError: true)!;
        return
        [
            (Extension)own.GetField(nameof(ValidateExtensions.Field))!.GetValue(null)!,
            (Extension)own.GetField(nameof(ValidateExtensions.Message))!.GetValue(null)!,
        ];
    }
}

using System.Text;
using CsCheck;
using Google.Protobuf.Reflection;
using StudioCalc.Tests;

namespace StudioCalc.Contracts.Tests;

public sealed class JsonRoundTripTests
{
    // Maps stand in answers only, which are never read.
    private static readonly Dictionary<string, MessageDescriptor> Types = Contract.Files.SelectMany(file => file.MessageTypes)
        .Where(type => !HoldsMap(type)).ToDictionary(type => type.FullName, StringComparer.Ordinal);

    public static TheoryData<string> Names => [.. Types.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Message_WrittenAndRead_IsTheSame(string name) => new RandomMessage(RandomValues.Valid).Of(Types[name]).Sample(
        message =>
        {
            foreach (var indented in new[] { false, true })
            {
                var again = message.Descriptor.Parser.ParseFrom([]);
                var violations = new Violations();
                ContractJson.Read(again, Encoding.UTF8.GetBytes(ContractJson.Write(message, indented)), violations);
                Assert.Empty(violations.List);
                Assert.Equal(message, again);
            }
        },
        iter: 200,
        print: message => message.ToString()!);

    private static bool HoldsMap(MessageDescriptor type) => type.Fields.InDeclarationOrder()
        .Any(field => field.IsMap || (field.FieldType == FieldType.Message && HoldsMap(field.MessageType)));
}

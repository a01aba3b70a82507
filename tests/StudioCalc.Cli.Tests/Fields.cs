using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli.Tests;

/// <summary>Fields with every unit that the contract's rules allow, whether a call has such a field yet or not.</summary>
internal static class Fields
{
    public static readonly string[] Suffixes =
    [
        "mm", "um", "m", "s", "lx", "lx_s", "cd_per_m2", "deg", "stops", "j", "celsius", "g", "k", "m_per_s", "w_per_m2_k", "w_per_m_k",
        "j_per_kg_k", "kg_per_m3", "hz", "mired", "per_s", "stops_per_h",
    ];

    private static readonly MessageDescriptor Message = Build();

    public static FieldDescriptor Plain => Message.FindFieldByName("plain");

    public static FieldDescriptor Counted(string suffix) => Message.FindFieldByName("counted_" + suffix);

    private static MessageDescriptor Build()
    {
        var message = new DescriptorProto { Name = "Quantities" };
        foreach (var name in Suffixes.Select(suffix => "counted_" + suffix).Append("plain"))
        {
            message.Field.Add(new FieldDescriptorProto
            {
                Name = name,
                Number = message.Field.Count + 1,
                Type = FieldDescriptorProto.Types.Type.Double,
                Label = FieldDescriptorProto.Types.Label.Optional,
            });
        }

        var file = new FileDescriptorProto { Name = "quantities.proto", Package = "studiocalc.tests", Syntax = "proto3", MessageType = { message } };
        return FileDescriptor.BuildFromByteStrings([file.ToByteString()])[0].MessageTypes[0];
    }
}

using Google.Protobuf.Reflection;

namespace StudioCalc.Contracts;

/// <summary>The comments of the contract files, read from the descriptor set inside this assembly.</summary>
public static class ContractComments
{
    private static readonly Lazy<Dictionary<string, string>> Comments = new(Load);

    /// <summary>The comment of a message, field, enum, enum value, service or method; empty when it has none.</summary>
    public static string Of(IDescriptor descriptor)
    {
        ArgumentNullException.ThrowIfNull(descriptor);
        return Comments.Value.GetValueOrDefault(descriptor.FullName, "");
    }

    /// <summary>The descriptor set of all contract files, with their comments, as bytes.</summary>
    public static byte[] DescriptorSet()
    {
        using var stream = typeof(ContractComments).Assembly.GetManifestResourceStream("studiocalc.binpb")
            ?? throw new InvalidOperationException("The descriptor set is missing from the build.");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static Dictionary<string, string> Load()
    {
        var comments = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in FileDescriptorSet.Parser.ParseFrom(DescriptorSet()).File)
        {
            foreach (var location in file.SourceCodeInfo.Location.Where(location => location.HasLeadingComments))
            {
                if (NameAt(file, [.. location.Path]) is { } name)
                {
                    comments[name] = string.Join(' ', location.LeadingComments.Split('\n', StringSplitOptions.TrimEntries)).Trim();
                }
            }
        }

        return comments;
    }

    // A path alternates field numbers of descriptor.proto with indexes.
    private static string? NameAt(FileDescriptorProto file, ReadOnlySpan<int> path) => path switch
    {
        [FileDescriptorProto.MessageTypeFieldNumber, var i, .. var rest] =>
            NameAt(file.MessageType[i], $"{file.Package}.{file.MessageType[i].Name}", rest),
        [FileDescriptorProto.EnumTypeFieldNumber, var i, .. var rest] =>
            NameAt(file.EnumType[i], file.Package, rest),
        [FileDescriptorProto.ServiceFieldNumber, var i] => $"{file.Package}.{file.Service[i].Name}",
        [FileDescriptorProto.ServiceFieldNumber, var i, ServiceDescriptorProto.MethodFieldNumber, var j] =>
            $"{file.Package}.{file.Service[i].Name}.{file.Service[i].Method[j].Name}",
        _ => null,
    };

    private static string? NameAt(DescriptorProto message, string name, ReadOnlySpan<int> path) => path switch
    {
        [] => name,
        [DescriptorProto.FieldFieldNumber, var i] => $"{name}.{message.Field[i].Name}",
        [DescriptorProto.OneofDeclFieldNumber, var i] => $"{name}.{message.OneofDecl[i].Name}",
        [DescriptorProto.NestedTypeFieldNumber, var i, .. var rest] =>
            NameAt(message.NestedType[i], $"{name}.{message.NestedType[i].Name}", rest),
        [DescriptorProto.EnumTypeFieldNumber, var i, .. var rest] => NameAt(message.EnumType[i], name, rest),
        _ => null,
    };

    // As in the runtime's descriptors, an enum value's full name goes through its enum.
    private static string? NameAt(EnumDescriptorProto type, string scope, ReadOnlySpan<int> path) => path switch
    {
        [] => $"{scope}.{type.Name}",
        [EnumDescriptorProto.ValueFieldNumber, var i] => $"{scope}.{type.Name}.{type.Value[i].Name}",
        _ => null,
    };
}

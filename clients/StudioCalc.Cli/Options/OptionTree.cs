using System.Collections.Immutable;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;

namespace StudioCalc.Cli;

/// <summary>The options of a request message, told by its descriptor.</summary>
internal static class OptionTree
{
    /// <summary>The options of the top fields, each with its parts.</summary>
    public static IReadOnlyList<OptionSpec> Of(MessageDescriptor request, Mentions mentions) => Parts(request, null, [request], mentions);

    /// <summary>Whether the field's value is one text: everything but messages with fields of their own.</summary>
    public static bool IsText(FieldDescriptor field) =>
        field.FieldType != FieldType.Message
        || field.MessageType.FullName == Duration.Descriptor.FullName
        || field.MessageType.FullName == Timestamp.Descriptor.FullName;

    /// <summary>The option of a field.</summary>
    /// <param name="parent">The option of the message that holds it; empty at the top.</param>
    /// <param name="field">The field.</param>
    public static string NameOf(string parent, FieldDescriptor field) =>
        (parent.Length == 0 ? "--" : parent + ".") + UnitSuffix.NameWithout(field).Replace('_', '-');

    private static ImmutableArray<OptionSpec> Parts(
        MessageDescriptor message, OptionSpec? parent, ImmutableList<MessageDescriptor> inside, Mentions mentions) =>
        [.. message.Fields.InFieldNumberOrder().Where(field => !field.IsMap).SelectMany(field => Of(field, parent, inside, mentions))];

    private static IEnumerable<OptionSpec> Of(
        FieldDescriptor field, OptionSpec? parent, ImmutableList<MessageDescriptor> inside, Mentions mentions)
    {
        var name = NameOf(parent?.Name ?? "", field);
        var path = parent is null ? field.Name : $"{parent.Path}.{field.Name}";
        if (IsText(field))
        {
            return [new(name, path, field, null, parent)];
        }

        if (inside.Contains(field.MessageType))
        {
            return [];
        }

        return field.IsRepeated
            ? mentions.Indexes(name).Select(index => WithParts(new($"{name}.{index}", $"{path}[{index}]", field, index, parent), inside, mentions))
            : [WithParts(new(name, path, field, null, parent), inside, mentions)];
    }

    private static OptionSpec WithParts(OptionSpec spec, ImmutableList<MessageDescriptor> inside, Mentions mentions)
    {
        spec.Parts = Parts(spec.Field.MessageType, spec, inside.Add(spec.Field.MessageType), mentions);
        return spec;
    }
}

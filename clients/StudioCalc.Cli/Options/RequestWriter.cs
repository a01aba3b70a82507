using System.Collections;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>Writes a request as the options that make it.</summary>
internal static class RequestWriter
{
    /// <summary>The arguments: each option, and its value behind it where it has one.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Write(IMessage request) => [.. Message(request, "")];

    private static IEnumerable<IReadOnlyList<string>> Message(IMessage message, string name)
    {
        foreach (var field in message.Descriptor.Fields.InFieldNumberOrder())
        {
            var option = OptionTree.NameOf(name, field);
            var value = field.Accessor.GetValue(message);
            var written = field switch
            {
                { IsRepeated: true } when OptionTree.IsText(field) => ((IList)value).Cast<object>().Select(item => Value(field, item, option)),
                { IsRepeated: true } => ((IList)value).Cast<IMessage>().SelectMany((item, index) => Part(item, $"{option}.{index}")),
                _ when !IsSet(field, message, value) => [],
                _ when OptionTree.IsText(field) => [Value(field, value, option)],
                _ => Part((IMessage)value, option),
            };
            foreach (var one in written)
            {
                yield return one;
            }
        }
    }

    private static IEnumerable<IReadOnlyList<string>> Part(IMessage message, string option) =>
        Shape.Of(message.Descriptor)?.Exact(message) is { } text ? [[option, text]]
        : message.Descriptor.Fields.InFieldNumberOrder().Count == 0 ? [[option]]
        : Message(message, option);

    private static IReadOnlyList<string> Value(FieldDescriptor field, object value, string option) =>
        value is true && !field.IsRepeated ? [option] : [option, ValueText.Write(field, value)];

    private static bool IsSet(FieldDescriptor field, IMessage message, object? value) =>
        field.HasPresence ? field.Accessor.HasValue(message) : value is not (null or false or 0.0 or 0u or 0 or "");
}

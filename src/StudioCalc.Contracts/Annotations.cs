using Buf.Validate;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace StudioCalc.Contracts;

/// <summary>The contract's annotations, always in this assembly's own copy of their types.</summary>
/// <remarks>An application may load another copy of these types, and the protobuf library keeps an annotation in the type that
/// it was first read into. So options are turned into bytes and read again.</remarks>
internal static class Annotations
{
    private static readonly ExtensionRegistry Own = [ValidateExtensions.Field, ValidateExtensions.Oneof, ValidateExtensions.Message];
    private static readonly MessageParser<FieldOptions> Fields = FieldOptions.Parser.WithExtensionRegistry(Own);
    private static readonly MessageParser<OneofOptions> Oneofs = OneofOptions.Parser.WithExtensionRegistry(Own);
    private static readonly MessageParser<MessageOptions> Messages = MessageOptions.Parser.WithExtensionRegistry(Own);

    public static Buf.Validate.FieldRules? Of(FieldDescriptor field) =>
        Again(field.ToProto().Options, Fields)?.GetExtension(ValidateExtensions.Field);

    public static OneofRules? Of(OneofDescriptor oneof) =>
        Again(oneof.ToProto().Options, Oneofs)?.GetExtension(ValidateExtensions.Oneof);

    public static MessageRules? Of(MessageDescriptor message) =>
        Again(message.ToProto().Options, Messages)?.GetExtension(ValidateExtensions.Message);

    private static TOptions? Again<TOptions>(TOptions? options, MessageParser<TOptions> parser)
        where TOptions : class, IMessage<TOptions> => options is null ? null : parser.ParseFrom(options.ToByteString());
}

using System.Runtime.CompilerServices;
using Buf.Validate;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace StudioCalc.Contracts;

/// <summary>The contract's annotations, always in this assembly's own copy of their types.</summary>
/// <remarks>
/// An application may load another copy, say with a general evaluator. The protobuf library knows extensions by the name of
/// their file, whichever copy comes first, so that the second contract would be read into types of the other copy. Its cache
/// is therefore switched off, which serves the other copy, and options are turned into bytes and read again, which serves
/// ours when the other contract came first.
/// </remarks>
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

    [ModuleInitializer]
    internal static void KeepCopiesApart() => FileDescriptor.DisableExtensionCaching();

    private static TOptions? Again<TOptions>(TOptions? options, MessageParser<TOptions> parser)
        where TOptions : class, IMessage<TOptions> => options is null ? null : parser.ParseFrom(options.ToByteString());
}

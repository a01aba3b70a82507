using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>Pictures and documents of an answer, as files.</summary>
internal static class AnswerFiles
{
    /// <summary>The fields of a call's answer that are files.</summary>
    public static IReadOnlyList<FieldDescriptor> Of(MethodDescriptor method) =>
    [
        .. method.OutputType.Fields.InFieldNumberOrder().Where(field => field is { FieldType: FieldType.Message, IsRepeated: false }
            && (field.MessageType == Picture.Descriptor || field.MessageType == Document.Descriptor)),
    ];

    /// <summary>The option that writes a field to a file.</summary>
    public static string OptionOf(FieldDescriptor field) => OptionTree.NameOf("", field);

    /// <summary>What a field holds and how to have it as a file; null when it is none.</summary>
    public static string? Show(FieldDescriptor field, object value) => Read(value) is var (mediaType, fileName, _)
        ? $"{mediaType}; {OptionOf(field)} {fileName} writes it to a file"
        : null;

    /// <summary>The plain text among an answer's documents; null when it has none.</summary>
    public static string? TextOf(IMessage answer) => answer.Descriptor.Fields.InFieldNumberOrder()
        .Select(field => field.Accessor.GetValue(answer)).OfType<Document>()
        .FirstOrDefault(document => document.MediaType.StartsWith("text/plain", StringComparison.Ordinal))?.Content;

    /// <summary>Writes a field; a file that is there is replaced whole or not at all.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static async Task SaveAsync(IMessage answer, FieldDescriptor field, string path, CancellationToken cancellation)
    {
        if (Read(field.Accessor.GetValue(answer)) is not var (_, _, content))
        {
            return;
        }

        var full = Path.GetFullPath(path);
        var half = $"{full}.{Environment.ProcessId}.part";
        try
        {
            await File.WriteAllTextAsync(half, content, cancellation).ConfigureAwait(false);
            File.Move(half, full, overwrite: true);
        }
        catch (UnauthorizedAccessException error)
        {
            throw new IOException($"{OptionOf(field)}: {error.Message}", error);
        }
        catch (DirectoryNotFoundException error)
        {
            throw new IOException($"{OptionOf(field)}: there is no folder for {path}; make it first.", error);
        }
        finally
        {
            File.Delete(half);
        }
    }

    private static (string MediaType, string FileName, string Content)? Read(object? value) => value switch
    {
        Picture picture => (picture.MediaType, picture.FileName, picture.Content),
        Document document => (document.MediaType, document.FileName, document.Content),
        _ => null,
    };
}

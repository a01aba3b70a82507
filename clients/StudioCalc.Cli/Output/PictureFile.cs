using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Cli;

/// <summary>The picture of an answer, as a file.</summary>
internal static class PictureFile
{
    /// <summary>Whether answers of a call hold a picture.</summary>
    public static bool IsIn(MethodDescriptor method) => FieldOf(method.OutputType) is not null;

    /// <summary>Writes the picture; a file that is there is replaced whole or not at all.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static async Task SaveAsync(IMessage answer, string path, CancellationToken cancellation)
    {
        if (FieldOf(answer.Descriptor)?.Accessor.GetValue(answer) is not Picture picture)
        {
            return;
        }

        var full = Path.GetFullPath(path);
        var half = $"{full}.{Environment.ProcessId}.part";
        try
        {
            await File.WriteAllTextAsync(half, picture.Content, cancellation).ConfigureAwait(false);
            File.Move(half, full, overwrite: true);
        }
        catch (UnauthorizedAccessException error)
        {
            throw new IOException($"--picture: {error.Message}", error);
        }
        catch (DirectoryNotFoundException error)
        {
            throw new IOException($"--picture: there is no folder for {path}; make it first.", error);
        }
        finally
        {
            File.Delete(half);
        }
    }

    private static FieldDescriptor? FieldOf(MessageDescriptor answer) => answer.Fields.InFieldNumberOrder()
        .FirstOrDefault(field => field.FieldType == FieldType.Message && field.MessageType == Picture.Descriptor);
}

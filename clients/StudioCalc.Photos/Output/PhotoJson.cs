using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace StudioCalc.Photos;

/// <summary>Answers as JSON, one object a line.</summary>
public static class PhotoJson
{
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>One photo as a line, without what is not known; notes with code and text.</summary>
    public static string Line(PhotoAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Plain))
        {
            json.WriteStartObject();
            foreach (var column in PhotoColumn.All)
            {
                Write(json, column.Name, column.Value(answer));
            }

            Write(json, answer.Notes);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    internal static JsonWriterOptions Indented { get; } = Plain with { Indented = true, NewLine = "\n" };

    internal static void Write(Utf8JsonWriter json, IEnumerable<PhotoNote> notes)
    {
        json.WriteStartArray(PhotoColumn.NotesName);
        foreach (var note in notes)
        {
            json.WriteStartObject();
            json.WriteString("code", note.Code);
            json.WriteString("text", PhotoText.Valid(note.Text));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    internal static void Write(Utf8JsonWriter json, string name, object? value)
    {
        switch (value)
        {
            case null:
                break;
            case double number:
                json.WriteNumber(name, number);
                break;
            case int number:
                json.WriteNumber(name, number);
                break;
            case bool yes:
                json.WriteBoolean(name, yes);
                break;
            default:
                json.WriteString(name, PhotoText.Of(value));
                break;
        }
    }
}

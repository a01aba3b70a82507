using System.Collections;
using System.Text.Json;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Contracts;

/// <summary>Walks JSON text along a message's descriptor and fills the message, noting every field that does not fit.</summary>
/// <remarks>Stricter than proto3 JSON asks: unknown and doubled names, numbers in quotes, <c>NaN</c> and <c>Infinity</c>
/// are refused. A null means that the field is not set. Names may be in the JSON or the proto form.</remarks>
internal sealed class JsonBody(Violations violations)
{
    private const int MaxDepth = 32;

    public void Read(IMessage message, ReadOnlyMemory<byte> utf8)
    {
        if (utf8.IsEmpty)
        {
            violations.Add("", RefusalReason.MalformedJson, "The text is empty.");
            return;
        }

        try
        {
            using var document = JsonDocument.Parse(utf8, new() { MaxDepth = MaxDepth });
            ReadMessage(message, document.RootElement, "");
        }
        catch (JsonException error)
        {
            violations.Add("", RefusalReason.MalformedJson, Where(error));
        }
        catch (InvalidOperationException)
        {
            // A text or a name with bytes that are not UTF-8, or with half a surrogate pair, shows only when it is read.
            violations.Add("", RefusalReason.MalformedJson, "A text holds bytes or escapes that are no character.");
        }
    }

    private static string Where(JsonException error) => error.LineNumber is { } line
        ? $"The text is not JSON: see line {line + 1}, byte {error.BytePositionInLine + 1}."
        : "The text is not JSON.";

    private void ReadMessage(IMessage message, JsonElement element, string path)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            violations.Add(path, RefusalReason.WrongType, "Must be an object.");
            return;
        }

        var seen = new HashSet<int>();
        foreach (var property in element.EnumerateObject())
        {
            if (JsonFields.Find(message.Descriptor, property.Name) is not { } field)
            {
                violations.Add(JsonFields.Join(path, JsonFields.Printable(property.Name)), RefusalReason.UnknownField,
                    $"Not a field of {message.Descriptor.Name}.");
                continue;
            }

            var fieldPath = JsonFields.Join(path, field.Name);
            if (!seen.Add(field.FieldNumber))
            {
                violations.Add(fieldPath, RefusalReason.DoubledField, "Given twice.");
            }
            else if (property.Value.ValueKind != JsonValueKind.Null && JsonFields.IsFree(message, field, fieldPath, violations))
            {
                ReadField(message, field, property.Value, fieldPath);
            }
        }
    }

    private void ReadField(IMessage message, FieldDescriptor field, JsonElement element, string path)
    {
        if (!field.IsRepeated)
        {
            if (ReadValue(field, element, path) is { } value)
            {
                field.Accessor.SetValue(message, value);
            }

            return;
        }

        if (element.ValueKind != JsonValueKind.Array)
        {
            violations.Add(path, RefusalReason.WrongType, "Must be a list.");
            return;
        }

        var list = (IList)field.Accessor.GetValue(message);
        var index = 0;
        foreach (var item in element.EnumerateArray())
        {
            if (ReadValue(field, item, $"{path}[{index++}]") is { } value)
            {
                list.Add(value);
            }
        }
    }

    private object? ReadValue(FieldDescriptor field, JsonElement element, string path)
    {
        if (field.FieldType != FieldType.Message || JsonFields.IsText(field.MessageType))
        {
            return ReadScalar(field, element, path);
        }

        var message = field.MessageType.Parser.ParseFrom(ByteString.Empty);
        ReadMessage(message, element, path);
        return message;
    }

    private object? ReadScalar(FieldDescriptor field, JsonElement element, string path)
    {
        object? value = (field.FieldType, element.ValueKind) switch
        {
            (FieldType.Double, JsonValueKind.Number) => element.GetDouble(),
            (FieldType.UInt32, JsonValueKind.Number) => element.TryGetUInt32(out var number) ? number : null,
            (FieldType.Int32 or FieldType.SInt32, JsonValueKind.Number) => element.TryGetInt32(out var number) ? number : null,
            (FieldType.Enum, JsonValueKind.Number) => element.TryGetInt32(out var number) ? number : null,
            (FieldType.Bool, JsonValueKind.True or JsonValueKind.False) => element.GetBoolean(),
            (FieldType.String, JsonValueKind.String) => element.GetString(),
            (FieldType.Enum, JsonValueKind.String) => field.EnumType.FindValueByName(element.GetString()!)?.Number,
            (FieldType.Message, JsonValueKind.String) => JsonFields.Parse(field, element.GetString()!),
            _ => null,
        };
        if (value is null)
        {
            JsonFields.Refuse(field, element.ValueKind == JsonValueKind.String ? element.GetString() : null, path, violations);
        }

        return value;
    }
}

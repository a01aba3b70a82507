using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Contracts;

/// <summary>Fills a message from query parameters, noting every one that does not fit.</summary>
internal sealed class JsonQuery(Violations violations)
{
    public void Read(IMessage message, IEnumerable<KeyValuePair<string, string>> parameters)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (name, text) in parameters)
        {
            ReadParameter(message, name, text, seen);
        }
    }

    private void ReadParameter(IMessage message, string name, string text, HashSet<string> seen)
    {
        var path = "";
        var names = name.Split('.');
        for (var i = 0; i < names.Length; i++)
        {
            var last = i == names.Length - 1;
            if (JsonFields.Find(message.Descriptor, names[i]) is not { } field)
            {
                violations.Add(JsonFields.Join(path, JsonFields.Printable(names[i])), RefusalReason.UnknownField,
                    $"Not a field of {message.Descriptor.Name}.");
                return;
            }

            path = JsonFields.Join(path, field.Name);
            var nested = field.FieldType == FieldType.Message && !JsonFields.IsText(field.MessageType);
            if (nested == last || field.IsRepeated)
            {
                violations.Add(path, RefusalReason.WrongType, nested
                    ? "A query parameter must name a single value inside it; otherwise send the request as a JSON body."
                    : "Has no fields of its own, or is a list; send the request as a JSON body.");
                return;
            }

            if (!JsonFields.IsFree(message, field, path, violations))
            {
                return;
            }

            if (last)
            {
                if (seen.Add(path))
                {
                    Set(message, field, text, path);
                }
                else
                {
                    violations.Add(path, RefusalReason.DoubledField, "Given twice.");
                }

                return;
            }

            message = Inside(message, field);
        }
    }

    private void Set(IMessage message, FieldDescriptor field, string text, string path)
    {
        if (JsonFields.Parse(field, text) is { } value)
        {
            field.Accessor.SetValue(message, value);
        }
        else
        {
            JsonFields.Refuse(field, text, path, violations);
        }
    }

    private static IMessage Inside(IMessage message, FieldDescriptor field)
    {
        if (field.Accessor.GetValue(message) is IMessage inner)
        {
            return inner;
        }

        inner = field.MessageType.Parser.ParseFrom(ByteString.Empty);
        field.Accessor.SetValue(message, inner);
        return inner;
    }
}

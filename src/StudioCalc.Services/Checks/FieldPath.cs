using Google.Protobuf.Reflection;

namespace StudioCalc.Services;

/// <summary>The proto path of a field, found by field numbers, so that a renamed field takes its rules along.</summary>
/// <remarks>Paths are made once and kept: <c>root[BackLightFieldNumber][ContinuousFieldNumber]</c> allocates only at its
/// first use.</remarks>
internal sealed class FieldPath
{
    private readonly MessageDescriptor? _message;
    private readonly string _text;
    private readonly FieldPath?[] _children;

    private FieldPath(MessageDescriptor? message, string text)
    {
        (_message, _text) = (message, text);
        _children = new FieldPath?[1 + (message?.Fields.InFieldNumberOrder().Max(field => (int?)field.FieldNumber) ?? 0)];
    }

    public FieldPath this[int fieldNumber] => _children[fieldNumber] ??= Child(fieldNumber);

    public static FieldPath Root(MessageDescriptor message) => new(message, "");

    /// <summary>An item of a list of messages. Not kept: a caller on the way of every request keeps it itself.</summary>
    public FieldPath At(int index) => new(_message, ItemAt(index));

    public string ItemAt(int index) => $"{_text}[{index}]";

    public override string ToString() => _text;

    private FieldPath Child(int fieldNumber)
    {
        var field = _message!.FindFieldByNumber(fieldNumber);
        return new(
            field.FieldType == FieldType.Message ? field.MessageType : null,
            _text.Length == 0 ? field.Name : $"{_text}.{field.Name}");
    }
}

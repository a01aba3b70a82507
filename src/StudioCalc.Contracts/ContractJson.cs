using Google.Protobuf;

namespace StudioCalc.Contracts;

/// <summary>The JSON form of the contract: proto3 JSON, read strictly and written with zeros.</summary>
public static class ContractJson
{
    private static readonly JsonFormatter Plain = new(new JsonFormatter.Settings(formatDefaultValues: true, Refusal.Details));
    private static readonly JsonFormatter Indented = new(new JsonFormatter.Settings(true, Refusal.Details).WithIndentation());

    /// <summary>Writes a message. Fields without presence are written even when they are zero or empty.</summary>
    public static string Write(IMessage message, bool indented = false) => (indented ? Indented : Plain).Format(message);

    /// <summary>Reads a message from UTF-8 text.</summary>
    /// <param name="message">An empty message, which is filled.</param>
    /// <param name="utf8">The text.</param>
    /// <param name="violations">Gets every field that is unknown, doubled or of the wrong type.</param>
    public static void Read(IMessage message, ReadOnlyMemory<byte> utf8, Violations violations) =>
        new JsonBody(violations).Read(message, utf8);

    /// <summary>Reads a message from query parameters, whose names are dotted paths: <c>settings.aperture.mark=f/5.6</c>.</summary>
    /// <param name="message">An empty message, which is filled.</param>
    /// <param name="parameters">Names and values, decoded.</param>
    /// <param name="violations">Gets every parameter that is unknown, doubled or of the wrong type.</param>
    public static void ReadQuery(
        IMessage message, IEnumerable<KeyValuePair<string, string>> parameters, Violations violations) =>
        new JsonQuery(violations).Read(message, parameters);
}

using System.Text.RegularExpressions;
using Google.Protobuf.Reflection;

namespace StudioCalc.Cli;

/// <summary>Names of a request's fields for people: the option where it was typed, the JSON path where a file holds it.</summary>
/// <param name="request">The request's type.</param>
/// <param name="told">The fields that options have set, each with its option.</param>
/// <param name="hasFile">Whether the rest comes from a file.</param>
internal sealed partial class OptionNames(MessageDescriptor request, IReadOnlyDictionary<string, OptionSpec> told, bool hasFile)
{
    private const string Missing = "Must be given, with ";
    private const string WholeRequest = "(the whole request)";

    /// <summary>The name of the field at a path of the contract's names.</summary>
    public string Of(string path)
    {
        if (path.Length == 0)
        {
            return WholeRequest;
        }

        if (Find(path) is { Choice: not null })
        {
            return Of(path.LastIndexOf('.') is var dot and >= 0 ? path[..dot] : "");
        }

        return told.TryGetValue(path, out var typed) ? typed.Name
            : !hasFile || told.Keys.Any(other => IsInside(other, path) || IsInside(path, other)) ? OptionOf(path)
            : JsonOf(path);
    }

    /// <summary>A refusal's sentence with the names of fields in it as people know them, and the unit of the figures.</summary>
    /// <param name="path">The field that it is about.</param>
    /// <param name="description">The sentence.</param>
    public string Explain(string path, string description)
    {
        if (Find(path) is not { } place)
        {
            return description;
        }

        if (place.Choice is { } choice)
        {
            return $"Give one of {Words.Or([.. choice.Fields.Select(field => Of(Beside(path, field)))])}.";
        }

        if (place.Field is { FieldType: FieldType.Message } missing && description.StartsWith(Missing, StringComparison.Ordinal))
        {
            return Shape.Of(missing.MessageType) is not null ? "Must be given." : Missing + Word().Replace(
                description[Missing.Length..], word => missing.MessageType.FindFieldByName(word.Value) is { } part ? Of($"{path}.{part.Name}") : word.Value);
        }

        var text = Rename(description, name => place.Holder.FindFieldByName(name) is { } field ? Of(Beside(path, field)) : null);
        if (place.Field is { FieldType: FieldType.Enum } values && description.StartsWith("Must be one of", StringComparison.Ordinal))
        {
            text = $"Must be one of {Words.Or(EnumText.Choices(values.EnumType))}.";
        }

        return place.Field is { } counted && UnitSuffix.Of(counted) is { } suffix && description.StartsWith("Must be a number", StringComparison.Ordinal)
            ? $"{text} The figures are in {suffix.Shown}."
            : text;
    }

    /// <summary>A text with the field names in it, which stand between backticks or have underscores, replaced where a name is known.</summary>
    public static string Rename(string text, Func<string, string?> nameOf) =>
        FieldName().Replace(text, match => nameOf(match.Groups["name"].Value) ?? match.Value);

    private string OptionOf(string path) => Walk(path, OptionTree.NameOf, (name, index) => $"{name}.{index}") is { } name
        ? Find(path)?.Field is { } field && (OptionTree.IsText(field) || Shape.Of(field.MessageType) is not null) ? name : name + ".*"
        : path;

    private string JsonOf(string path) => Walk(
        path, (parent, field) => parent.Length == 0 ? field.JsonName : $"{parent}.{field.JsonName}", (name, index) => $"{name}[{index}]") ?? path;

    private string? Walk(string path, Func<string, FieldDescriptor, string> step, Func<string, string, string> item)
    {
        var (message, name) = (request, "");
        foreach (var part in path.Split('.'))
        {
            var field = message?.FindFieldByName(part.Split('[')[0]);
            if (field is null)
            {
                return null;
            }

            name = step(name, field);
            name = part.IndexOf('[', StringComparison.Ordinal) is var at and >= 0 ? item(name, part[(at + 1)..^1]) : name;
            message = field.FieldType == FieldType.Message ? field.MessageType : null;
        }

        return name;
    }

    private (MessageDescriptor Holder, FieldDescriptor? Field, OneofDescriptor? Choice)? Find(string path)
    {
        var parts = path.Split('.');
        MessageDescriptor? holder = request;
        foreach (var part in parts.SkipLast(1))
        {
            holder = holder?.FindFieldByName(part.Split('[')[0]) is { FieldType: FieldType.Message } field ? field.MessageType : null;
        }

        return holder is null ? null : (holder, holder.FindFieldByName(parts[^1].Split('[')[0]), holder.Oneofs.FirstOrDefault(oneof => oneof.Name == parts[^1]));
    }

    private static string Beside(string path, FieldDescriptor field) =>
        path.LastIndexOf('.') is var dot and >= 0 ? $"{path[..dot]}.{field.Name}" : field.Name;

    private static bool IsInside(string path, string other) =>
        path.Length > other.Length && path.StartsWith(other, StringComparison.Ordinal) && path[other.Length] is '.' or '[';

    [GeneratedRegex("[a-z][a-z0-9_]*", RegexOptions.None, 1000)]
    private static partial Regex Word();

    [GeneratedRegex("`(?<name>[a-z][a-z0-9_]*)`|\\b(?<name>[a-z]+(_[a-z0-9]+)+)\\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex FieldName();
}

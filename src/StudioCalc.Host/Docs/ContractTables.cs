using System.Globalization;
using System.Text.Encodings.Web;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>Messages and enums of the contract as tables.</summary>
internal static class ContractTables
{
    private static readonly string[] Columns = ["Field", "Type", "Unit", "Range", "Presence", "Unset means", "Meaning"];

    public static string Of(MessageDescriptor message)
    {
        var head = $"<h3 id=\"message-{message.Name}\">{message.Name}</h3>\n{MarkdownText.Comment(ContractComments.Of(message))}";
        var fields = message.Fields.InDeclarationOrder();
        return head + (fields.Count == 0 ? "<p>It has no fields.</p>\n" : Table(Columns, fields.Select(Row)));
    }

    public static string Of(EnumDescriptor type)
    {
        var rows = type.Values.Select(value =>
            $"<tr id=\"value-{value.Name}\"><td>{Linked(value)}</td><td>{value.Number.ToString(CultureInfo.InvariantCulture)}</td><td>{Inline(ContractComments.Of(value))}</td></tr>\n");
        return $"<h3 id=\"enum-{type.Name}\">{type.Name}</h3>\n{MarkdownText.Comment(ContractComments.Of(type))}{Table(["Value", "Number", "Meaning"], rows)}";
    }

    public static string Link(MessageDescriptor message) => $"<a href=\"#message-{message.Name}\">{message.Name}</a>";

    private static string Row(FieldDescriptor field)
    {
        string[] cells =
        [
            $"<code>{field.JsonName}</code>", Type(field), FieldFacts.UnitOf(field), FieldFacts.RangeOf(field), Inline(FieldFacts.PresenceOf(field)),
            Inline(FieldFacts.DefaultOf(field)), Inline(ContractComments.Of(field)),
        ];
        return $"<tr id=\"field-{field.ContainingType.Name}.{field.JsonName}\">{string.Concat(cells.Select(cell => $"<td>{cell}</td>"))}</tr>\n";
    }

    private static string Table(IEnumerable<string> columns, IEnumerable<string> rows)
    {
        var heads = string.Concat(columns.Select(column => $"<th scope=\"col\">{column}</th>"));
        return $"<div class=\"table\"><table>\n<thead><tr>{heads}</tr></thead>\n<tbody>\n{string.Concat(rows)}</tbody></table></div>\n";
    }

    // Reasons and advisories have a page of their own.
    private static string Linked(EnumValueDescriptor value)
    {
        var (name, folder) = value.EnumDescriptor.Name switch
        {
            "RefusalReason" => (value.Name["REFUSAL_REASON_".Length..], "refusals"),
            "AdvisoryCode" => (value.Name["ADVISORY_CODE_".Length..], "advisories"),
            _ => ("", ""),
        };
        var page = $"docs/{folder}/{name.ToLowerInvariant().Replace('_', '-')}.md";
        return EmbeddedDocs.Pages.Contains(page)
            ? $"<a href=\"{EmbeddedDocs.Address(page)}\"><code>{value.Name}</code></a>"
            : $"<code>{value.Name}</code>";
    }

    private static string Type(FieldDescriptor field)
    {
        if (field.IsMap)
        {
            return $"map of names to {Type(field.MessageType.FindFieldByNumber(2))}";
        }

        var type = field.FieldType switch
        {
            FieldType.Double => "number",
            FieldType.UInt32 or FieldType.Int32 or FieldType.SInt32 => "whole number",
            FieldType.Bool => "true or false",
            FieldType.String => "text",
            FieldType.Bytes => "bytes in base64",
            FieldType.Enum => $"<a href=\"#enum-{field.EnumType.Name}\">{field.EnumType.Name}</a>",
            FieldType.Message when OpenApiValues.IsText(field.MessageType) => field.MessageType.Name == "Duration" ? "time, such as <code>90s</code>" : "moment",
            FieldType.Message => Link(field.MessageType),
            _ => HtmlEncoder.Default.Encode(field.FieldType.ToString()),
        };
        return field.IsRepeated ? "list of " + type : type;
    }

    private static string Inline(string text) => text.Length == 0 ? "" : MarkdownText.Comment(text).Trim();
}

using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace StudioCalc.Photos;

/// <summary>The text of a sidecar: properties of our own namespace, put beside whatever else is there.</summary>
public static class XmpPacket
{
    /// <summary>The namespace of our properties.</summary>
    public const string Namespace = "urn:studiocalc:photo:1#";

    private const string Prefix = "studiocalc";
    private const string Start = """
        <?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
          <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
          </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="w"?>
        """;

    private static readonly XNamespace Own = Namespace;
    private static readonly XNamespace Rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static readonly XNamespace Meta = "adobe:ns:meta/";

    /// <summary>A sidecar with the worked-out values of an answer.</summary>
    public static string New(PhotoAnswer answer) => Merge(Start.ReplaceLineEndings("\n"), answer);

    /// <summary>A sidecar with its own properties replaced, and everything else left as it means.</summary>
    /// <exception cref="FormatException">The text is no sidecar into which properties can safely go; the message says why.</exception>
    public static string Merge(string text, PhotoAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var document = Parse(text);
        var rdf = RdfOf(document);
        var descriptions = rdf.Elements(Rdf + "Description").ToList();
        var about = AboutOf(descriptions);
        foreach (var description in descriptions)
        {
            RemoveOwn(description);
        }

        var last = rdf.Elements().LastOrDefault();
        var added = Description(answer, about);
        if (last is null)
        {
            rdf.Nodes().OfType<XText>().Remove();
            rdf.Add(new XText("\n    "), added, new XText("\n  "));
        }
        else
        {
            last.AddAfterSelf(new XText("\n    "), added);
        }

        return Write(document);
    }

    private static XDocument Parse(string text)
    {
        try
        {
            using var reader = XmlReader.Create(new StringReader(text), new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null });
            return XDocument.Load(reader, LoadOptions.PreserveWhitespace);
        }
        catch (XmlException error)
        {
            throw new FormatException($"It is not XML that can be read: {error.Message}", error);
        }
    }

    private static XElement RdfOf(XDocument document) => document.Root switch
    {
        { } root when root.Name == Rdf + "RDF" => root,
        { } root when root.Name == Meta + "xmpmeta" && root.Elements(Rdf + "RDF").ToList() is [var only] => only,
        _ => throw new FormatException("It does not hold one XMP packet."),
    };

    // All descriptions of a packet are about the same thing.
    private static string AboutOf(List<XElement> descriptions)
    {
        var abouts = descriptions.Select(description => (description.Attribute(Rdf + "about") ?? description.Attribute("about"))?.Value ?? "").Distinct(StringComparer.Ordinal).ToList();
        return abouts.Count > 1 ? throw new FormatException("Its parts are about different things.") : abouts.FirstOrDefault("");
    }

    private static void RemoveOwn(XElement description)
    {
        var own = description.Elements().Where(property => property.Name.Namespace == Own).ToList();
        var attributes = description.Attributes().Where(attribute => attribute.Name.Namespace == Own && !attribute.IsNamespaceDeclaration).ToList();
        attributes.Remove();
        foreach (var property in own)
        {
            RemoveWithIndent(property);
        }

        var isOurs = own.Count + attributes.Count > 0 && !description.HasElements
            && description.Nodes().All(node => node is XText text && string.IsNullOrWhiteSpace(text.Value))
            && description.Attributes().All(attribute => attribute.IsNamespaceDeclaration || attribute.Name == Rdf + "about");
        if (isOurs)
        {
            RemoveWithIndent(description);
        }
    }

    private static void RemoveWithIndent(XElement element)
    {
        if (element.PreviousNode is XText text && string.IsNullOrWhiteSpace(text.Value))
        {
            text.Remove();
        }

        element.Remove();
    }

    private static XElement Description(PhotoAnswer answer, string about)
    {
        var description = new XElement(Rdf + "Description", new XAttribute(Rdf + "about", about), new XAttribute(XNamespace.Xmlns + Prefix, Own.NamespaceName));
        foreach (var column in PhotoColumn.All.Where(column => column.IsWorkedOut))
        {
            if (column.Value(answer) is { } value)
            {
                description.Add(new XText("\n      "), new XElement(Own + column.Name, value is bool yes ? yes ? "True" : "False" : PhotoText.Of(value)));
            }
        }

        var codes = answer.Notes.Select(note => note.Code).Distinct(StringComparer.Ordinal).Select(code => new XElement(Rdf + "li", code)).ToList();
        if (codes.Count > 0)
        {
            description.Add(new XText("\n      "), new XElement(Own + PhotoColumn.NotesName, new XElement(Rdf + "Bag", codes)));
        }

        description.Add(new XText("\n    "));
        return description;
    }

    private static string Write(XDocument document)
    {
        var text = new StringBuilder();
        var settings = new XmlWriterSettings { OmitXmlDeclaration = true, NewLineHandling = NewLineHandling.Entitize, Encoding = new UTF8Encoding(false) };
        using (var writer = XmlWriter.Create(text, settings))
        {
            document.Save(writer);
        }

        return (document.Declaration is null ? "" : """<?xml version="1.0" encoding="utf-8"?>""" + "\n") + text;
    }
}

using System.Collections;
using Google.Protobuf;

namespace StudioCalc.Cli;

/// <summary>Puts typed options into a request, over what a file has put there, and remembers which option said what.</summary>
internal sealed class TypedRequest(IMessage request)
{
    private readonly Dictionary<string, OptionSpec> _told = new(StringComparer.Ordinal);
    private readonly Dictionary<string, OptionSpec> _chosen = new(StringComparer.Ordinal);
    private readonly List<(string Name, string Text)> _refusals = [];

    /// <summary>The request.</summary>
    public IMessage Request => request;

    /// <summary>The options that cannot be taken, and why.</summary>
    public IReadOnlyList<(string Name, string Text)> Refusals => _refusals;

    /// <summary>The fields that options have set, each with its option.</summary>
    public IReadOnlyDictionary<string, OptionSpec> Told => _told;

    /// <summary>Takes options in the order of their tree: a shape comes before its parts.</summary>
    public void Take(IEnumerable<TypedOption> options)
    {
        foreach (var option in options)
        {
            try
            {
                Take(option);
            }
            catch (FormatException error)
            {
                _refusals.Add((option.Spec.Name, error.Message));
            }
        }
    }

    private void Take(TypedOption option)
    {
        var (spec, texts, times) = option;
        if (spec.Kind != OptionKind.List && times > 1)
        {
            throw new FormatException("Given more than once; write it once.");
        }

        if (texts.Count < times && spec.Kind != OptionKind.Flag && spec.Field.FieldType != Google.Protobuf.Reflection.FieldType.Bool)
        {
            throw new FormatException($"Has no value; write {HelpForm.Of(spec)} behind it.");
        }

        var holder = Holder(spec, spec);
        switch (spec.Kind)
        {
            case OptionKind.Flag:
                Put(holder, spec, spec.Field.MessageType.Parser.ParseFrom(ByteString.Empty));
                break;
            case OptionKind.Shape:
                var message = Shape.Of(spec.Field.MessageType)!.Read(texts[0]);
                Put(holder, spec, message);
                Tell(message, spec);
                break;
            case OptionKind.List:
                var values = texts.Select(text => ValueText.Read(spec.Field, text)).ToList();
                var list = (IList)spec.Field.Accessor.GetValue(holder);
                list.Clear();
                values.ForEach(value => list.Add(value));
                _told[spec.Path] = spec;
                break;
            default:
                if (_told.TryGetValue(spec.Path, out var same))
                {
                    throw new FormatException($"Says the same as {same.Name}; write one of the two.");
                }

                Put(holder, spec, texts.Count == 0 ? true : ValueText.Read(spec.Field, texts[0]));
                break;
        }
    }

    // The message that holds the option's field, made where it is missing.
    private IMessage Holder(OptionSpec spec, OptionSpec typed)
    {
        if (spec.Parent is not { } parent)
        {
            return request;
        }

        var holder = Holder(parent, typed);
        if (parent.Index is { } index)
        {
            var list = (IList)parent.Field.Accessor.GetValue(holder);
            if (index >= list.Count)
            {
                Add(list, parent, parent.Field.MessageType.Parser.ParseFrom(ByteString.Empty));
            }

            return (IMessage)list[index]!;
        }

        Choose(parent, typed);
        if (parent.Field.Accessor.GetValue(holder) is not IMessage inner)
        {
            inner = parent.Field.MessageType.Parser.ParseFrom(ByteString.Empty);
            parent.Field.Accessor.SetValue(holder, inner);
        }

        return inner;
    }

    private void Put(IMessage holder, OptionSpec spec, object value)
    {
        if (spec.Index is not { } index)
        {
            Choose(spec, spec);
            spec.Field.Accessor.SetValue(holder, value);
        }
        else if ((IList)spec.Field.Accessor.GetValue(holder) is var list && index < list.Count)
        {
            list[index] = value;
        }
        else
        {
            Add(list, spec, value);
        }

        _told[spec.Path] = spec;
    }

    private static void Add(IList list, OptionSpec item, object value)
    {
        if (item.Index != list.Count)
        {
            var name = item.Name[..item.Name.LastIndexOf('.')];
            throw new FormatException($"The list has {Words.Count(list.Count, "item")} before it; the next is {name}.{list.Count}.");
        }

        list.Add(value);
    }

    // A shape tells fields inside it, and makes the choices among them.
    private void Tell(IMessage message, OptionSpec spec)
    {
        foreach (var part in spec.Parts.Where(part => part.Field.HasPresence && part.Field.Accessor.HasValue(message)))
        {
            _told[part.Path] = spec;
            Choose(part, spec);
        }
    }

    // Of two options that make the same choice differently, neither counts.
    private void Choose(OptionSpec member, OptionSpec typed)
    {
        if (member.Choice is not { } choice)
        {
            return;
        }

        var key = $"{member.Parent?.Path}.{choice.Name}={member.Field.Name}";
        var other = choice.Fields.Where(field => field != member.Field)
            .Select(field => _chosen.GetValueOrDefault($"{member.Parent?.Path}.{choice.Name}={field.Name}"))
            .FirstOrDefault(found => found is not null);
        if (other is not null)
        {
            throw new FormatException($"Cannot stand beside {other.Name}: the request takes one of them; write one of the two.");
        }

        _chosen.TryAdd(key, typed);
    }
}

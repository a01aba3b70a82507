using System.Reflection;
using Google.Protobuf;
using Google.Protobuf.Collections;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.Contracts;

namespace StudioCalc.Services;

/// <summary>Checks messages of one type: every rule of the contract, and that every number is finite.</summary>
/// <remarks>Built once for each type from the contract's annotations, with typed getters, so that a check neither boxes nor
/// interprets. Messages inside a message, and the active member of a oneof, are checked too.</remarks>
internal sealed class MessageCheck<T>
    where T : class, IMessage<T>
{
    private readonly FieldCheck<T>[] _fields;

    private MessageCheck(MessageDescriptor message)
    {
        FieldRules.RefuseMessageRules(message);
        _fields =
        [
            .. message.Fields.InFieldNumberOrder().Select(Build).OfType<FieldCheck<T>>(),
            .. message.Oneofs.Where(oneof => !oneof.IsSynthetic && FieldRules.IsRequired(oneof)).Select(Build),
        ];
    }

    public static MessageCheck<T> Instance { get; } = new(Activator.CreateInstance<T>().Descriptor);

    /// <summary>Whether all rules hold; names the fields where they do not when given <paramref name="violations"/>.</summary>
    public bool Check(T message, string path, Violations? violations)
    {
        var holds = true;
        foreach (var field in _fields)
        {
            holds &= field.Check(message, path, violations);
            if (!holds && violations is null)
            {
                return false;
            }
        }

        return holds;
    }

    private static FieldCheck<T>? Build(FieldDescriptor field)
    {
        var rules = FieldRules.Of(field);
        if (field.IsMap)
        {
            return field.MessageType.FindFieldByNumber(2).FieldType == FieldType.Double
                ? new FiguresCheck<T>(field.Name, Getter<MapField<string, double>>(field.PropertyName))
                : throw new NotSupportedException($"{field.FullName}: a map that the checks do not know.");
        }

        var type = field.FieldType switch
        {
            FieldType.Double => typeof(double),
            FieldType.UInt32 => typeof(uint),
            FieldType.Int32 or FieldType.SInt32 => typeof(int),
            FieldType.Bool => typeof(bool),
            FieldType.String => typeof(string),
            FieldType.Enum => field.EnumType.ClrType,
            FieldType.Message => field.MessageType.ClrType,
            _ => throw new NotSupportedException($"{field.FullName}: a type that the checks do not know."),
        };
        return (FieldCheck<T>?)Method(nameof(Of), type).Invoke(null, [field, rules]);
    }

    private static FieldCheck<T>? Of<TValue>(FieldDescriptor field, FieldRules rules)
    {
        if (field.IsRepeated)
        {
            return new ListCheck<T, TValue>(
                field.Name, rules, Getter<RepeatedField<TValue>>(field.PropertyName), ValueOf<TValue>(field, rules.Items ?? new()));
        }

        var check = ValueOf<TValue>(field, rules);
        return check is null && !rules.Required
            ? null
            : new SingleCheck<T, TValue>(field.Name, rules.Required, Needs(field), IsSet(field), Getter<TValue>(field.PropertyName), check);
    }

    // What a missing message of the contract is to hold: its required members, or any where none is required.
    private static string Needs(FieldDescriptor field)
    {
        if (field.FieldType != FieldType.Message || field.MessageType.File.Package != field.File.Package)
        {
            return "";
        }

        var members = field.MessageType.Fields.InFieldNumberOrder();
        string[] required =
        [
            .. members.Where(member => FieldRules.Of(member).Required).Select(member => member.Name),
            .. field.MessageType.Oneofs.Where(oneof => !oneof.IsSynthetic && FieldRules.IsRequired(oneof))
                .Select(oneof => $"one of {string.Join(", ", oneof.Fields.Select(member => member.Name))}"),
        ];
        return required.Length > 0
            ? $", with {string.Join(" and ", required)}"
            : $", with any of {string.Join(", ", members.Select(member => member.Name))}";
    }

    private static ValueCheck<TValue>? ValueOf<TValue>(FieldDescriptor field, FieldRules rules) => (ValueCheck<TValue>?)(field.FieldType switch
    {
        FieldType.Double => new NumberCheck(rules),
        FieldType.UInt32 => new WholeCheck<uint>(rules),
        FieldType.Int32 or FieldType.SInt32 => new WholeCheck<int>(rules),
        FieldType.String => new TextCheck(rules),
        FieldType.Enum => rules.DefinedOnly || rules.NotZero
            ? Activator.CreateInstance(typeof(EnumCheck<>).MakeGenericType(typeof(TValue)), rules, NamesOf(field.EnumType))
            : null,
        FieldType.Message when typeof(TValue) == typeof(Duration) => new DurationCheck(rules),
        FieldType.Message when typeof(TValue) == typeof(Timestamp) => new TimestampCheck(),
        FieldType.Message => Activator.CreateInstance(typeof(InnerCheck<>).MakeGenericType(typeof(TValue))),
        _ => null,
    });

    private static OneofCheck<T> Build(OneofDescriptor oneof)
    {
        var property = typeof(T).GetProperties().Single(candidate => candidate.Name.Equals(
            oneof.Name.Replace("_", "", StringComparison.Ordinal) + "Case", StringComparison.OrdinalIgnoreCase));
        var members = string.Join(", ", oneof.Fields.Select(field => field.Name));
        return (OneofCheck<T>)Method(nameof(Of), property.PropertyType, oneof: true).Invoke(null, [oneof.Name, members, property.Name])!;
    }

    private static OneofCheck<T> Of<TCase>(string name, string members, string property)
        where TCase : struct, System.Enum
    {
        var get = Getter<TCase>(property);
        return new(name, members, message =>
        {
            var value = get(message);
            return System.Runtime.CompilerServices.Unsafe.As<TCase, int>(ref value);
        });
    }

    private static MethodInfo Method(string name, System.Type argument, bool oneof = false) => typeof(MessageCheck<T>)
        .GetMethods(BindingFlags.NonPublic | BindingFlags.Static)
        .Single(method => method.Name == name && method.IsGenericMethod && method.GetParameters().Length == (oneof ? 3 : 2))
        .MakeGenericMethod(argument);

    private static Func<T, bool>? IsSet(FieldDescriptor field)
    {
        if (!field.HasPresence)
        {
            return null;
        }

        if (field.FieldType != FieldType.Message)
        {
            return Getter<bool>("Has" + field.PropertyName);
        }

        var get = Getter<object>(field.PropertyName);
        return message => get(message) is not null;
    }

    private static Func<T, TValue> Getter<TValue>(string property) =>
        typeof(T).GetProperty(property)!.GetMethod!.CreateDelegate<Func<T, TValue>>();

    private static string NamesOf(EnumDescriptor type) =>
        string.Join(", ", type.Values.Where(value => value.Number != 0).Select(value => value.Name));
}

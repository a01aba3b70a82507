using System.Collections;
using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.Contracts;

namespace StudioCalc.Tests;

/// <summary>What values a random message takes.</summary>
internal enum RandomValues
{
    /// <summary>Values that the contract's rules let in.</summary>
    Valid,

    /// <summary>Mostly the bounds of the rules and values just beyond them, with whatever else a caller may send.</summary>
    Boundary,
}

/// <summary>Random messages of any type of the contract, made along the descriptor and the annotated rules.</summary>
internal sealed class RandomMessage(
    RandomValues values, Func<FieldDescriptor, Gen<object>?>? own = null, Func<FieldDescriptor, bool>? leaveOut = null)
{
    private static readonly Gen<string> Text = Gen.OneOf("a", "é", "½", "\U0001F35C", " ");

    private bool IsBoundary => values == RandomValues.Boundary;

    public Gen<IMessage> Of(MessageDescriptor type)
    {
        var members = type.Oneofs.Where(oneof => !oneof.IsSynthetic).Select(Member);
        var fields = type.Fields.InDeclarationOrder().Where(field => field.RealContainingOneof is null && !field.IsMap && leaveOut?.Invoke(field) != true).Select(Field);
        return members.Concat(fields)
            .Aggregate(Gen.Const<Action<IMessage>>(static _ => { }), (all, one) => Gen.Select(all, one, (a, b) => a + b))
            .Select(fill =>
            {
                var message = type.Parser.ParseFrom(ByteString.Empty);
                fill(message);
                return message;
            });
    }

    private Gen<Action<IMessage>> Member(OneofDescriptor oneof)
    {
        var members = oneof.Fields.Select(field => (4, (IGen<Action<IMessage>>)Set(field)));
        return Gen.Frequency([.. members, .. Unset(!IsBoundary && FieldRules.IsRequired(oneof))]);
    }

    private Gen<Action<IMessage>> Field(FieldDescriptor field)
    {
        if (field.IsRepeated)
        {
            return List(field);
        }

        var always = !field.HasPresence || (!IsBoundary && FieldRules.Of(field).Required);
        return Gen.Frequency([(5, Set(field)), .. Unset(always)]);
    }

    private static (int, IGen<Action<IMessage>>)[] Unset(bool never) => never ? [] : [(1, Gen.Const<Action<IMessage>>(static _ => { }))];

    private Gen<Action<IMessage>> Set(FieldDescriptor field) =>
        Value(field, FieldRules.Of(field)).Select(value => (Action<IMessage>)(message => field.Accessor.SetValue(message, value)));

    private Gen<Action<IMessage>> List(FieldDescriptor field)
    {
        // Mostly a few items: a long list of long lists takes its time and shows nothing more.
        var rules = FieldRules.Of(field);
        var (least, most) = (IsBoundary ? 0 : rules.MinCount, (rules.MaxCount ?? 3) + (IsBoundary ? 2 : 0));
        var item = Value(field, rules.Items ?? new());
        var length = Gen.Frequency((9, Gen.Int[least, Math.Min(least + 4, most)]), (1, Gen.Int[least, most]));
        return length.SelectMany(count => item.List[count]).Select(items => (Action<IMessage>)(message =>
        {
            var list = (IList)field.Accessor.GetValue(message);
            foreach (var item in items)
            {
                list.Add(item);
            }
        }));
    }

    private Gen<object> Value(FieldDescriptor field, FieldRules rules) => own?.Invoke(field) ?? field.FieldType switch
    {
        FieldType.Double => Number(rules).Select(value => (object)value),
        FieldType.UInt32 => Whole(rules, 0, uint.MaxValue).Select(value => (object)(uint)value),
        FieldType.Int32 or FieldType.SInt32 => Whole(rules, int.MinValue, int.MaxValue).Select(value => (object)(int)value),
        FieldType.Bool => Gen.Bool.Select(value => (object)value),
        FieldType.String => Words(rules).Select(value => (object)value),
        FieldType.Enum => Gen.OneOf([.. Numbers(field.EnumType, rules)]).Select(number => (object)number),
        FieldType.Message when field.MessageType.FullName == Duration.Descriptor.FullName => Time(rules).Select(value => (object)value),
        FieldType.Message when field.MessageType.FullName == Timestamp.Descriptor.FullName =>
            Gen.Select(Gen.Long[-62135596800, 253402300799], Gen.Int[0, 999_999_999], (s, n) => (object)new Timestamp { Seconds = s, Nanos = n }),
        FieldType.Message => Of(field.MessageType).Select(value => (object)value),
        _ => throw new NotSupportedException(field.FullName),
    };

    private Gen<double> Number(FieldRules rules)
    {
        var (min, max) = (rules.Min ?? -1e6, rules.Max ?? 1e6);
        Gen<double> inside = Gen.OneOf<double>(Gen.Double[min, max], Gen.Const(min), Gen.Const(max));
        if (min > 0)
        {
            inside = Gen.OneOf<double>(inside, Gen.Double[Math.Log(min), Math.Log(max)].Select(log => Math.Clamp(Math.Exp(log), min, max)));
        }

        return IsBoundary
            ? Gen.OneOf<double>(inside, Gen.OneOf(
                Math.BitDecrement(min), Math.BitIncrement(max), min, max, 0, -0.0, double.Epsilon, double.MinValue, double.MaxValue,
                double.NaN, double.PositiveInfinity, double.NegativeInfinity))
            : inside;
    }

    private Gen<Duration> Time(FieldRules rules)
    {
        // The contract's Durations are never negative, in answers either.
        var (min, max) = ((long)(rules.Min ?? 0), (long)(rules.Max ?? 1000));
        Gen<Duration> inside = Gen.Select(Gen.Long[min, Math.Max(min, max - 1)], Gen.Int[0, 999_999_999], (s, n) => new Duration { Seconds = s, Nanos = n });
        return IsBoundary
            ? Gen.OneOf<Duration>(inside, Gen.OneOf(min, max, min - 1, max + 1).Select(s => new Duration { Seconds = s }))
            : inside;
    }

    private Gen<long> Whole(FieldRules rules, long lowest, long highest)
    {
        var (min, max) = ((long)(rules.Min ?? Math.Max(lowest, -1000)), (long)(rules.Max ?? 1000));
        return IsBoundary
            ? Gen.OneOf(new[] { min, max, min - 1, max + 1, 0, lowest, highest }.Where(value => value >= lowest && value <= highest).ToArray())
            : Gen.Long[min, max];
    }

    private Gen<string> Words(FieldRules rules)
    {
        var most = rules.MaxCount ?? 8;
        var lengths = IsBoundary ? Gen.OneOf(0, 1, most, most + 1, 2 * most, 2 * most + 1) : Gen.Int[rules.MinCount, most];
        return lengths.SelectMany(length => Text.Array[length]).Select(string.Concat);
    }

    private IEnumerable<int> Numbers(EnumDescriptor type, FieldRules rules) => type.Values.Select(value => value.Number)
        .Where(number => IsBoundary || number != 0 || !rules.NotZero)
        .Concat(IsBoundary ? [-1, 99, int.MaxValue] : []);
}

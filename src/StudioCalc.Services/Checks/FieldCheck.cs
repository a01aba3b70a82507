using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Google.Protobuf;
using Google.Protobuf.Collections;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Checks one field of a message of type <typeparamref name="T"/> against the contract's rules.</summary>
/// <remarks>Without <c>violations</c> it only tells whether the field holds, and allocates nothing.</remarks>
internal abstract class FieldCheck<T>(string name)
{
    public string Name => name;

    public abstract bool Check(T message, string path, Violations? violations);

    protected bool Refuse(string path, Violations? violations, RefusalReason reason, string description)
    {
        violations?.Add(Join(path), reason, description);
        return false;
    }

    protected bool Missing(string path, Violations? violations, string with = "") =>
        Refuse(path, violations, RefusalReason.Required, $"Must be given{with}.");

    protected string Join(string path) => path.Length == 0 ? name : $"{path}.{name}";
}

/// <summary>Decides whether an optional value is there, and hands it to a <see cref="ValueCheck{TValue}"/>.</summary>
/// <remarks>A message that is missing is refused with what it needs, in <c>with</c>.</remarks>
internal sealed class SingleCheck<T, TValue>(
    string name, bool required, string with, Func<T, bool>? isSet, Func<T, TValue> get, ValueCheck<TValue>? check) : FieldCheck<T>(name)
{
    public override bool Check(T message, string path, Violations? violations)
    {
        if (isSet is not null && !isSet(message))
        {
            return !required || Missing(path, violations, with);
        }

        return check is null || check.Check(get(message), violations is null ? "" : Join(path), violations);
    }
}

/// <summary>Checks the items of a list.</summary>
internal sealed class ListCheck<T, TItem>(
    string name, FieldRules rules, Func<T, RepeatedField<TItem>> get, ValueCheck<TItem>? item) : FieldCheck<T>(name)
{
    public override bool Check(T message, string path, Violations? violations)
    {
        var list = get(message);
        if (rules.Required && list.Count == 0)
        {
            return Missing(path, violations);
        }

        var holds = (list.Count >= rules.MinCount && list.Count <= (rules.MaxCount ?? int.MaxValue))
            || Refuse(path, violations, RefusalReason.ItemCount, $"Must have {Counts.Range(rules)} items.");
        if (item is null || !holds)
        {
            return holds;
        }

        for (var i = 0; i < list.Count; i++)
        {
            holds &= item.Check(list[i], violations is null ? "" : $"{Join(path)}[{i}]", violations);
        }

        return holds;
    }
}

/// <summary>Checks that the figures of a map are finite.</summary>
internal sealed class FiguresCheck<T>(string name, Func<T, MapField<string, double>> get) : FieldCheck<T>(name)
{
    public override bool Check(T message, string path, Violations? violations)
    {
        foreach (var (_, figure) in get(message))
        {
            if (!double.IsFinite(figure))
            {
                return Refuse(path, violations, RefusalReason.OutOfRange, "Must be a finite number.");
            }
        }

        return true;
    }
}

/// <summary>Checks that one member of a oneof is set.</summary>
internal sealed class OneofCheck<T>(string name, string members, Func<T, int> setCase) : FieldCheck<T>(name)
{
    public override bool Check(T message, string path, Violations? violations) =>
        setCase(message) != 0 || Refuse(path, violations, RefusalReason.Required, $"Give one of {members}.");
}

/// <summary>Checks a value that is there.</summary>
internal abstract class ValueCheck<TValue>
{
    public abstract bool Check(TValue value, string path, Violations? violations);

    protected static bool Refuse(string path, Violations? violations, RefusalReason reason, string description)
    {
        violations?.Add(path, reason, description);
        return false;
    }
}

/// <summary>A number: finite, and within its bounds where it has them.</summary>
internal sealed class NumberCheck(FieldRules rules) : ValueCheck<double>
{
    public override bool Check(double value, string path, Violations? violations) =>
        (double.IsFinite(value) && Bounds.Hold(rules, value))
        || Refuse(path, violations, RefusalReason.OutOfRange, $"Must be a number{Bounds.Range(rules)}.");
}

/// <summary>A whole number within its bounds.</summary>
internal sealed class WholeCheck<TInteger>(FieldRules rules) : ValueCheck<TInteger>
    where TInteger : struct, IConvertible
{
    public override bool Check(TInteger value, string path, Violations? violations) =>
        Bounds.Hold(rules, value.ToDouble(CultureInfo.InvariantCulture))
        || Refuse(path, violations, RefusalReason.OutOfRange, $"Must be a whole number{Bounds.Range(rules)}.");
}

/// <summary>A Duration within its bounds, in the one form that the standard allows: less than a second of nanoseconds, and
/// both parts of one sign.</summary>
internal sealed class DurationCheck(FieldRules rules) : ValueCheck<Duration>
{
    private const int NanosASecond = 1_000_000_000;

    public override bool Check(Duration value, string path, Violations? violations) =>
        (IsNormal(value) && Bounds.Hold(rules, value.Seconds + (double)value.Nanos / NanosASecond))
        || Refuse(path, violations, RefusalReason.OutOfRange, $"Must be a time in seconds{Bounds.Range(rules)}.");

    private static bool IsNormal(Duration value) => value.Nanos is > -NanosASecond and < NanosASecond
        && Math.Sign(value.Seconds) * Math.Sign(value.Nanos) >= 0;
}

/// <summary>A moment from the year 1 to 9999, in the one form that the standard allows: less than a second of nanoseconds, none
/// below zero.</summary>
internal sealed class TimestampCheck : ValueCheck<Timestamp>
{
    private const long FirstS = -62_135_596_800;
    private const long LastS = 253_402_300_799;

    public override bool Check(Timestamp value, string path, Violations? violations) =>
        value is { Seconds: >= FirstS and <= LastS, Nanos: >= 0 and < 1_000_000_000 }
        || Refuse(path, violations, RefusalReason.OutOfRange, "Must be a moment from the year 1 to 9999.");
}

/// <summary>A value of the contract's enum.</summary>
internal sealed class EnumCheck<TEnum>(FieldRules rules, string names) : ValueCheck<TEnum>
    where TEnum : struct, System.Enum
{
    public override bool Check(TEnum value, string path, Violations? violations) =>
        !((rules.NotZero && Unsafe.As<TEnum, int>(ref value) == 0) || (rules.DefinedOnly && !System.Enum.IsDefined(value)))
        || Refuse(path, violations, RefusalReason.UnknownValue, $"Must be one of {names}.");
}

/// <summary>A text of a length, in characters rather than UTF-16 units.</summary>
internal sealed class TextCheck(FieldRules rules) : ValueCheck<string>
{
    public override bool Check(string value, string path, Violations? violations)
    {
        var length = 0;
        foreach (Rune _ in value.EnumerateRunes())
        {
            length++;
        }

        return (length >= rules.MinCount && length <= (rules.MaxCount ?? int.MaxValue))
            || Refuse(path, violations, RefusalReason.TextLength, $"Must have {Counts.Range(rules)} characters.");
    }
}

/// <summary>A message inside a message.</summary>
internal sealed class InnerCheck<TInner> : ValueCheck<TInner>
    where TInner : class, IMessage<TInner>
{
    private readonly MessageCheck<TInner> _inner = MessageCheck<TInner>.Instance;

    public override bool Check(TInner value, string path, Violations? violations) => _inner.Check(value, path, violations);
}

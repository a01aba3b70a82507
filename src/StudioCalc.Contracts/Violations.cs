using System.Diagnostics.CodeAnalysis;
using Google.Rpc;
using StudioCalc.V1;

namespace StudioCalc.Contracts;

/// <summary>The bad fields of one request, in the order found.</summary>
public sealed class Violations
{
    private List<BadRequest.Types.FieldViolation>? _list;

    /// <summary>Whether any field is bad.</summary>
    [MemberNotNullWhen(true, nameof(_list))]
    public bool Any => _list is not null;

    /// <summary>The bad fields.</summary>
    public IReadOnlyList<BadRequest.Types.FieldViolation> List => _list ?? [];

    /// <summary>Notes a bad field.</summary>
    /// <param name="field">The proto path of the field, such as <c>components[2].height_mm</c>; empty for the whole request.</param>
    /// <param name="reason">The stable reason.</param>
    /// <param name="description">An English sentence that tells what is allowed. It never repeats the input.</param>
    public void Add(string field, RefusalReason reason, string description) => (_list ??= []).Add(new()
    {
        Field = field,
        Reason = Refusal.NameOf(reason),
        Description = description,
    });
}

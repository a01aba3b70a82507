using System.Globalization;
using System.Text.RegularExpressions;
using Google.Protobuf.Reflection;
using StudioCalc.Contracts;

namespace StudioCalc.Host;

/// <summary>What the contract tells about a field, in words.</summary>
internal static partial class FieldFacts
{
    private static readonly (string Suffix, string Unit)[] Units =
    [
        ("_cd_per_m2", "cd/m²"), ("_w_per_m2_k", "W/(m² K)"), ("_w_per_m_k", "W/(m K)"), ("_j_per_kg_k", "J/(kg K)"), ("_kg_per_m3", "kg/m³"), ("_m_per_s", "m/s"),
        ("_lx_s", "lx s"), ("_mb_per_s", "MB/s"), ("_mbit_per_s", "Mbit/s"), ("_per_s", "1/s"), ("_per_mm", "1/mm"), ("_stops", "stops"), ("_mired", "mired"), ("_celsius", "°C"), ("_deg", "°"), ("_lx", "lx"),
        ("_mm", "mm"), ("_um", "µm"), ("_hz", "Hz"), ("_bytes", "bytes"), ("_mb", "MB"), ("_gb", "GB"), ("_w", "W"), ("_v", "V"), ("_a", "A"), ("_g", "g"), ("_j", "J"), ("_k", "K"), ("_s", "s"),
    ];

    private static readonly IReadOnlyList<MethodDescriptor> Methods = [.. Contract.Services.SelectMany(service => service.Methods)];

    private static readonly HashSet<MessageDescriptor> Inputs = Reachable(Methods.Select(method => method.InputType));

    private static readonly HashSet<MessageDescriptor> Outputs = Reachable(Methods.Select(method => method.OutputType));

    /// <summary>Whether callers send the message; what no call uses yet counts as sent.</summary>
    public static bool IsSent(MessageDescriptor message) => Inputs.Contains(message) || !Outputs.Contains(message);

    /// <summary>The unit that the name carries; empty when it carries none.</summary>
    public static string UnitOf(FieldDescriptor field) => field.FieldType is FieldType.Double or FieldType.UInt32 or FieldType.Int32 or FieldType.SInt32
        ? Array.Find(Units, unit => field.Name.EndsWith(unit.Suffix, StringComparison.Ordinal)).Unit ?? ""
        : "";

    /// <summary>The limits of the value, or of the list and its items; empty when it has none.</summary>
    public static string RangeOf(FieldDescriptor field)
    {
        var rules = FieldRules.Of(field);
        if (!field.IsRepeated)
        {
            return RangeOf(rules, "characters");
        }

        var items = rules.Items is { } each ? RangeOf(each, "characters") : "";
        return RangeOf(rules, "items") + (items.Length > 0 ? "; each " + items : "");
    }

    /// <summary>Whether the field must be there.</summary>
    public static string PresenceOf(FieldDescriptor field)
    {
        if (field.RealContainingOneof is { } oneof)
        {
            var members = string.Join(", ", oneof.Fields.Select(member => $"`{member.JsonName}`"));
            return (FieldRules.IsRequired(oneof) ? "exactly one of " : "at most one of ") + members;
        }

        return field switch
        {
            _ when IsRequired(field) => "required",
            _ when IsSent(field.ContainingType) => "optional",
            { HasPresence: true } => "may be unset",
            _ => "always",
        };
    }

    /// <summary>What an unset field means, as its comment says; empty when it says nothing.</summary>
    public static string DefaultOf(FieldDescriptor field)
    {
        var told = Default().Match(ContractComments.Of(field));
        return told.Success ? told.Groups["meaning"].Value
            : field.FieldType == FieldType.Bool && !field.HasPresence && IsSent(field.ContainingType) ? "false" : "";
    }

    /// <summary>Whether a request without the field is refused.</summary>
    public static bool IsRequired(FieldDescriptor field)
    {
        var rules = FieldRules.Of(field);
        return rules.Required || (field.IsRepeated && rules.MinCount > 0);
    }

    /// <summary>The oneofs that the contract writes; an optional field makes one of its own, which does not count.</summary>
    public static IEnumerable<OneofDescriptor> OneofsOf(MessageDescriptor message) => message.Oneofs.Take(message.RealOneofCount);

    /// <summary>A number as JSON writes it, without an exponent where that is possible.</summary>
    public static string Number(double value) => Math.Abs(value) is 0 or (> 1e-9 and < 1e18)
        ? ((decimal)value).ToString(CultureInfo.InvariantCulture)
        : value.ToString("R", CultureInfo.InvariantCulture);

    private static string RangeOf(FieldRules rules, string counted) => rules switch
    {
        { Min: { } min, Max: { } max } => $"{(rules.MinOpen ? "over " : "")}{Number(min)} to {(rules.MaxOpen ? "under " : "")}{Number(max)}",
        { Min: { } min } => (rules.MinOpen ? "over " : "from ") + Number(min),
        { Max: { } max } => (rules.MaxOpen ? "under " : "up to ") + Number(max),
        { MaxCount: { } most } => $"{rules.MinCount} to {most} {counted}",
        { MinCount: > 0 } => $"at least {rules.MinCount} {counted}",
        _ => "",
    };

    private static HashSet<MessageDescriptor> Reachable(IEnumerable<MessageDescriptor> messages)
    {
        var found = new HashSet<MessageDescriptor>();
        var open = new Stack<MessageDescriptor>(messages);
        while (open.TryPop(out var message))
        {
            if (found.Add(message))
            {
                foreach (var field in message.Fields.InDeclarationOrder().Where(field => field.FieldType == FieldType.Message))
                {
                    open.Push(field.MessageType);
                }
            }
        }

        return found;
    }

    // Up to the end of the sentence; a point between digits does not end it.
    [GeneratedRegex(@"(Unset|Empty) means (?<meaning>([^.]|\.(?=\d))+)\.", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Default();
}

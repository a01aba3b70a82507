using System.Globalization;
using System.Text;
using Grpc.Core;
using StudioCalc.Contracts;

namespace StudioCalc.Client;

/// <summary>The host refuses the request as it stands; sending it again will not help.</summary>
public sealed class InvalidRequestException : StudioCalcException
{
    /// <summary>Makes an exception.</summary>
    /// <param name="message">What went wrong, for people. The violations are added to it.</param>
    /// <param name="violations">The bad fields.</param>
    /// <param name="cause">The error behind it.</param>
    public InvalidRequestException(string message, IReadOnlyList<FieldViolation> violations, Exception? cause = null)
        : base(StatusCode.InvalidArgument, Describe(message, violations), cause) => Violations = violations;

    /// <summary>The bad fields, in the order in which the host found them.</summary>
    public IReadOnlyList<FieldViolation> Violations { get; }

    private static string Describe(string message, IReadOnlyList<FieldViolation> violations)
    {
        ArgumentNullException.ThrowIfNull(violations);
        var text = new StringBuilder(message);
        foreach (var (field, reason, description) in violations)
        {
            var name = field.Length == 0 ? "request" : field;
            text.Append(CultureInfo.InvariantCulture, $"{Environment.NewLine}  {name}: {description} ({Refusal.NameOf(reason)})");
        }

        return text.ToString();
    }
}

using StudioCalc.V1;

namespace StudioCalc.Client;

/// <summary>One bad field of a request.</summary>
/// <param name="Field">The field's path in the contract's names, such as <c>settings.aperture.mark</c>; empty for the whole
/// request.</param>
/// <param name="Reason">Why it is refused; unspecified when the host is newer than this client and has a reason of its own.</param>
/// <param name="Description">An English sentence that tells what is allowed, for display only.</param>
public sealed record FieldViolation(string Field, RefusalReason Reason, string Description);

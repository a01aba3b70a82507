using Google.Rpc;

namespace StudioCalc.System.Tests;

/// <summary>What a caller reads from a refusal.</summary>
internal sealed record Refused(int Code, string? Reason, string? Domain, string[] Fields)
{
    public static Refused Of(Status status) => new(
        status.Code,
        status.GetDetail<ErrorInfo>()?.Reason,
        status.GetDetail<ErrorInfo>()?.Domain,
        [.. (status.GetDetail<BadRequest>()?.FieldViolations ?? []).Select(violation => $"{violation.Field} {violation.Reason}")]);

    /// <summary>The call was refused just so.</summary>
    public void Is(Code code, string? reason, params string[] fields)
    {
        Assert.Equal(((int)code, reason, reason is null ? null : "studiocalc"), (Code, Reason, Domain));
        Assert.Equal(fields, Fields);
    }
}

using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What mapping a request gathers: the scale its marks stand on, bad fields, and advisories.</summary>
/// <param name="scale">The request's own scale, or null when it states none.</param>
internal sealed class RequestContext(StopScale? scale)
{
    /// <summary>The scale on which answers are marked.</summary>
    public Maths.StopScale Scale { get; } = (scale ?? StopScale.Third).ToMaths();

    /// <summary>Whether the request states no scale, so that marks are read on the default one.</summary>
    public bool ScaleIsAssumed { get; } = scale is null;

    public Violations Violations { get; } = new();

    public List<Advisory> Advisories { get; } = [];

    /// <summary>A context of the same scale whose notes are thrown away.</summary>
    public RequestContext Silent() => new(scale);

    /// <exception cref="RpcException">Any field is bad.</exception>
    public void ThrowIfRefused()
    {
        if (Violations.Any)
        {
            throw Refusal.InvalidFields(Violations).ToRpcException();
        }
    }
}

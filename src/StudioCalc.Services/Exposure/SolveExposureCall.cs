using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Solves for a setting.</content>
public sealed partial class ExposureAdapter
{
    /// <inheritdoc/>
    public override Task<SolveExposureResponse> SolveExposure(SolveExposureRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Solve(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Solve(request, ref trail);
        response.Working.Add(
            trail, response.ResultCase == SolveExposureResponse.ResultOneofCase.Solution ? "solution." : "not_reached.nearest.");
        return Task.FromResult(response);
    }

    private static SolveExposureResponse Solve<TTrail>(SolveExposureRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.Camera is { HasScale: true } ? request.Camera.Scale : null);
        var input = SolveExposureReader.Read(context, request, ref trail);
        context.ThrowIfRefused();
        var outcome = ExposureSolver.Solve(input!, ref trail);
        var response = SolveExposureWriter.Response(input!, outcome);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

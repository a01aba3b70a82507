using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>SolveFlash.</content>
public sealed partial class ExposureAdapter
{
    /// <inheritdoc/>
    public override Task<SolveFlashResponse> SolveFlash(SolveFlashRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Flash(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Flash(request, ref trail);
        response.Working.Add(
            trail, response.ResultCase == SolveFlashResponse.ResultOneofCase.Solution ? "solution." : "not_reached.nearest.");
        return Task.FromResult(response);
    }

    private static SolveFlashResponse Flash<TTrail>(SolveFlashRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.Camera is { HasScale: true } camera ? camera.Scale : null);
        var input = SolveFlashReader.Read(context, request, ref trail);
        context.ThrowIfRefused();
        var response = new SolveFlashResponse { ModelRevision = ModelRevision.Current };
        response.Advisories.Add(context.Advisories);
        SolveFlashWriter.Write(response, request, input!, FlashExposure.Solve(input!, ref trail));
        return response;
    }
}

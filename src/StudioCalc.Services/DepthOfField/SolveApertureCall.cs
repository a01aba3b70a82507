using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>SolveAperture.</content>
public sealed partial class DepthOfFieldAdapter
{
    /// <inheritdoc/>
    public override Task<SolveApertureResponse> SolveAperture(SolveApertureRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Solve(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Solve(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static SolveApertureResponse Solve<TTrail>(SolveApertureRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.Limits is { HasScale: true } ? request.Limits.Scale : null);
        var input = SolveApertureReader.Read(context, request, ref trail);
        context.ThrowIfRefused();
        var read = input!;
        var outcome = DepthAperture.Solve(read.Focus, read.BlurMm, read.WavelengthUm, read.Range, ref trail);
        var response = SolveApertureWriter.Response(read, outcome);
        if (response.Solution is { } solution)
        {
            context.NoteDiffraction(outcome.AiryDiscUm, read.BlurMm, "solution.aperture");
            if (!solution.Aperture.HasMark)
            {
                context.Advisories.Add(Advise.NoMarkHolds(outcome.FNumber));
            }
        }

        context.NoteFineBlur(read.BlurMm, read.Sensor, SolveApertureReader.BlurPath);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

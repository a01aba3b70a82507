using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Follows a back light that changes.</content>
public sealed partial class LightingRatioAdapter
{
    private const double DefaultToleranceStops = 1 / 3.0;
    private const double LongestForecastH = 24;

    /// <inheritdoc/>
    public override Task<FollowBackLightResponse> FollowBackLight(FollowBackLightRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(FollowBackLight(request, ref none, ref none));
        }

        // The drift belongs to the whole answer, the shutter speed to its result.
        var (drift, shutter) = (StepTrail.Start(), StepTrail.Start());
        var response = FollowBackLight(request, ref drift, ref shutter);
        response.Working.Add(drift);
        response.Working.Add(
            shutter, response.ResultCase == FollowBackLightResponse.ResultOneofCase.Solution ? "solution." : "not_reached.nearest.");
        return Task.FromResult(response);
    }

    private static FollowBackLightResponse FollowBackLight<TTrail>(FollowBackLightRequest request, ref TTrail driftTrail, ref TTrail shutterTrail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.Camera.HasScale ? request.Camera.Scale : null);
        var read = FollowReader.Read(context, request, ref driftTrail);
        context.ThrowIfRefused();

        var (input, readings) = read!.Value;
        var tolerance = request.HasToleranceStops ? request.ToleranceStops : DefaultToleranceStops;
        var drift = Drift.Of(readings, ref driftTrail);
        var outcome = Follow.Solve(input, ref shutterTrail);
        var response = new FollowBackLightResponse
        {
            ChangeStops = drift.ChangeStops,
            DriftPerHourStops = drift.PerHourStops,
            ModelRevision = ModelRevision.Current,
        };
        if (drift.HoursWithin(tolerance) is var hours and <= LongestForecastH)
        {
            response.ToleranceLeft = Duration.FromTimeSpan(TimeSpan.FromHours(hours));
        }

        if (drift.SpreadStops > tolerance)
        {
            context.Advisories.Add(Advise.DriftUnsteady(drift.SpreadStops));
        }

        FollowWriter.Write(response, context, input, outcome);
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EstimateRecycling.</content>
public sealed partial class ExposureAdapter
{
    private const double DefaultShortestRecycleS = 0.1;
    private const double FlashingIntervalS = 1 / 3.0;
    private const uint LongSeriesFrames = 20;
    private const double IntervalRounding = 1e-9;

    private static readonly FieldPath RecyclingRoot = FieldPath.Root(EstimateRecyclingRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EstimateRecyclingResponse> EstimateRecycling(EstimateRecyclingRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Recycling(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Recycling(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EstimateRecyclingResponse Recycling<TTrail>(EstimateRecyclingRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var power = context.Read(request.Power, RecyclingRoot[EstimateRecyclingRequest.PowerFieldNumber]);
        if (request.HasShortestRecycleS && request.ShortestRecycleS > request.RecycleTimeS)
        {
            context.Violations.Add(
                RecyclingRoot[EstimateRecyclingRequest.ShortestRecycleSFieldNumber].ToString(), RefusalReason.Conflict,
                "Must not be longer than the time after full power.");
        }

        context.ThrowIfRefused();
        var answer = FlashRecycling.Estimate(
            new()
            {
                RecycleTimeS = request.RecycleTimeS,
                ShortestRecycleS = request.HasShortestRecycleS
                    ? request.ShortestRecycleS
                    : Math.Min(DefaultShortestRecycleS, request.RecycleTimeS),
                PowerBelowFullStops = power!.Value,
                FullEnergyJ = request.HasFullEnergyJ ? request.FullEnergyJ : null,
                FullPowerFramesPerCharge = request.HasFullPowerFramesPerCharge ? (int)request.FullPowerFramesPerCharge : null,
                Frames = request.HasFrames ? (int)request.Frames : null,
                WantedIntervalS = request.WantedIntervalS,
            },
            ref trail);
        var response = new EstimateRecyclingResponse
        {
            IntervalS = answer.IntervalS,
            FramesPerS = answer.FramesPerS,
            ModelRevision = ModelRevision.Current,
        };
        Write(response, answer);
        response.Advisories.Add(RecyclingAdvisories(request, answer));
        return response;
    }

    private static void Write(EstimateRecyclingResponse response, FlashRecycling answer)
    {
        if (answer.EnergyJ is { } energy)
        {
            response.EnergyJ = energy;
        }

        if (answer.FramesPerCharge is { } perCharge)
        {
            response.FramesPerCharge = perCharge;
        }

        if (answer.SeriesS is { } series)
        {
            response.SeriesS = series;
        }

        if (answer.Charges is { } charges)
        {
            response.Charges = charges;
        }
    }

    private static IEnumerable<Advisory> RecyclingAdvisories(EstimateRecyclingRequest request, FlashRecycling answer)
    {
        if (answer.SeriesIntervalS < FlashingIntervalS - IntervalRounding)
        {
            yield return Advise.FlashingLight(1 / answer.SeriesIntervalS);
        }

        if (request.Frames > LongSeriesFrames && request.WantedIntervalS <= answer.IntervalS)
        {
            yield return Advise.HeadOverheating(request.Frames);
        }

        if (request.HasWantedIntervalS && answer.IntervalS > request.WantedIntervalS + IntervalRounding)
        {
            yield return Advise.RecyclingSlower(request.WantedIntervalS, answer.IntervalS);
        }
    }
}

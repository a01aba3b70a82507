using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>ListFlickerFreeSpeeds.</content>
public sealed partial class ExposureAdapter
{
    private const double DefaultToleratedBanding = 0.05;

    private static readonly FieldPath FlickerRoot = FieldPath.Root(ListFlickerFreeSpeedsRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<ListFlickerFreeSpeedsResponse> ListFlickerFreeSpeeds(ListFlickerFreeSpeedsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(FlickerFree(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = FlickerFree(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static ListFlickerFreeSpeedsResponse FlickerFree<TTrail>(ListFlickerFreeSpeedsRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.Camera is { HasScale: true } camera ? camera.Scale : null);
        var limits = context.ReadLimits(request.Camera, FlickerRoot[ListFlickerFreeSpeedsRequest.CameraFieldNumber]);
        var judged = request.ShutterSpeed is null
            ? null
            : context.Read(request.ShutterSpeed, FlickerRoot[ListFlickerFreeSpeedsRequest.ShutterSpeedFieldNumber]);
        context.ThrowIfRefused();

        var tolerated = request.HasToleratedBanding ? request.ToleratedBanding : DefaultToleratedBanding;
        trail.Section("flicker");
        var response = new ListFlickerFreeSpeedsResponse
        {
            FlickerPeriodS = Flicker.PeriodS(request.MainsFrequencyHz, ref trail),
            ModelRevision = ModelRevision.Current,
        };
        response.Speeds.Add(Flicker
            .WithoutBands(request.MainsFrequencyHz, tolerated, context.Scale, limits!.FastestShutterSpeedS, limits.SlowestShutterSpeedS)
            .Select(mark => new FlickerFreeSpeed
            {
                ShutterSpeed = CameraWriter.ShutterSpeed(mark.TimeS, context.Scale),
                Flickers = (uint)mark.Flickers,
                Banding = mark.Banding,
                BandFreeTimeS = mark.BandFreeTimeS,
            }));
        response.Advisories.Add(context.Advisories);
        if (response.Speeds.Count == 0)
        {
            response.Advisories.Add(Advise.NoMarkWithoutBands());
        }

        if (judged is { } time)
        {
            response.Banding = Flicker.Banding(request.MainsFrequencyHz, time, ref trail);
            if (response.Banding > tolerated)
            {
                response.Advisories.Add(Advise.BandsVisible(response.Banding, tolerated));
            }
        }

        return response;
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Separates flash from daylight.</content>
public sealed partial class LightingRatioAdapter
{
    private const double DefaultMeterErrorStops = 0.1;
    private const double ErrorWorthSayingStops = 1 / 3.0;

    private static readonly FieldPath SeparatePath = FieldPath.Root(SeparateFlashRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<SeparateFlashResponse> SeparateFlash(SeparateFlashRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Separate(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Separate(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static SeparateFlashResponse Separate<TTrail>(SeparateFlashRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var totalPath = SeparatePath[SeparateFlashRequest.TotalApertureFieldNumber];
        var total = context.Read(request.TotalAperture, totalPath);
        var daylight = context.Read(request.DaylightAperture, SeparatePath[SeparateFlashRequest.DaylightApertureFieldNumber]);
        if (total < daylight)
        {
            context.Violations.Add(totalPath.ToString(), RefusalReason.Conflict,
                "Flash and daylight together cannot read less than the daylight alone.");
        }

        context.ThrowIfRefused();

        var error = request.HasMeterErrorStops ? request.MeterErrorStops : DefaultMeterErrorStops;
        var separation = Separation.Of(total!.Value, daylight!.Value, error, ref trail);
        var response = new SeparateFlashResponse { ModelRevision = ModelRevision.Current };
        if (!separation.IsTold)
        {
            response.NotReached = new()
            {
                TotalOverDaylightStops = separation.TotalOverDaylightStops,
                ShortfallStops = separation.ShortfallStops,
            };
            response.NotReached.Remedies.Add(
                SeparationRemedies.For(total.Value, daylight.Value, error, context.Scale).Select(Remedy));
            response.NotReached.Remedies.Add(new V1.SeparationRemedy { Kind = SeparationRemedyKind.ShadeMeter });
        }
        else
        {
            response.Solution = new()
            {
                Aperture = CameraWriter.Aperture(separation.FNumber, context.Scale),
                FlashShare = separation.FlashShare,
                ErrorGain = separation.ErrorGain,
                ErrorStops = separation.ErrorStops,
            };
            if (separation.ErrorStops > ErrorWorthSayingStops)
            {
                context.Advisories.Add(Advise.SeparationUncertain(separation.ErrorStops));
            }
        }

        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static V1.SeparationRemedy Remedy(Maths.SeparationRemedy remedy) => new()
    {
        Kind = remedy.ByShutterSpeed ? SeparationRemedyKind.FasterShutterSpeed : SeparationRemedyKind.RaiseFlashPower,
        ChangeStops = remedy.ChangeStops,
        TotalOverDaylightStops = remedy.Outcome.TotalOverDaylightStops,
    };
}

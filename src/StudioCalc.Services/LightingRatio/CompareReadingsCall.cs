using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Compares two lights.</content>
public sealed partial class LightingRatioAdapter
{
    private static readonly FieldPath ComparePath = FieldPath.Root(CompareReadingsRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<CompareReadingsResponse> CompareReadings(CompareReadingsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Compare(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Compare(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static CompareReadingsResponse Compare<TTrail>(CompareReadingsRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        trail.Section("key");
        var key = context.ReadAlone(request.Key, ComparePath[CompareReadingsRequest.KeyFieldNumber], ref trail);
        trail.Section("fill");
        var fill = context.ReadAlone(request.Fill, ComparePath[CompareReadingsRequest.FillFieldNumber], ref trail);
        var shutterSpeed = CompareAt(context, request);
        context.ThrowIfRefused();

        context.NoteReceptors([key!.Value, fill!.Value]);
        var comparison = Comparison.Of(key.Value.Level, fill.Value.Level, shutterSpeed!.Value, ref trail);
        if (comparison.KeyOverFillStops < 0)
        {
            context.Advisories.Add(Advise.KeyWeakerThanFill(comparison.KeyOverFillStops));
        }

        var response = new CompareReadingsResponse
        {
            KeyOverFillStops = comparison.KeyOverFillStops,
            Ratio = BalanceWriter.Ratio(comparison.Ratio),
            KeyPlusFillOverKeyStops = comparison.BothOverKeyStops,
            KeyPlusFillOverFillStops = comparison.BothOverFillStops,
            FillShare = comparison.FillShare,
            ModelRevision = ModelRevision.Current,
        };
        response.Advisories.Add(context.Advisories);
        return response;
    }

    // Lights of one kind keep their difference at every shutter speed: a second will do.
    private static double? CompareAt(RequestContext context, CompareReadingsRequest request)
    {
        var path = ComparePath[CompareReadingsRequest.ShutterSpeedFieldNumber];
        if (request.ShutterSpeed is not null)
        {
            return context.Read(request.ShutterSpeed, path);
        }

        if (request.Key.KindCase == request.Fill.KindCase)
        {
            return 1;
        }

        context.Violations.Add(path.ToString(), RefusalReason.Required,
            "Must be given for flash against light that stays on, which alone depends on it.");
        return null;
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EstimatePlacementError.</content>
public sealed partial class FillPlacementAdapter
{
    private const double SpanMm = 10;
    private const double SmallTapeShare = 0.1;

    private static readonly FieldPath ErrorRoot = FieldPath.Root(EstimatePlacementErrorRequest.Descriptor);
    private static readonly FieldPath ErrorSource = ErrorRoot[EstimatePlacementErrorRequest.SourceFieldNumber];

    /// <inheritdoc/>
    public override Task<EstimatePlacementErrorResponse> EstimatePlacementError(
        EstimatePlacementErrorRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(PlacementErrorOf(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = PlacementErrorOf(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EstimatePlacementErrorResponse PlacementErrorOf<TTrail>(EstimatePlacementErrorRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(scale: null);
        trail.Section("source");
        var source = context.Read(request.Source, ErrorSource, ref trail);
        context.ThrowIfRefused();

        var aim = request.Source.Pose.AimPoint.ToVector();
        var rates = new DistanceRate[request.DistancesMm.Count];
        for (var i = 0; i < rates.Length; i++)
        {
            trail.Section(FormattableString.Invariant($"distance {i}"));
            rates[i] = PlacementError.RateAt(source!.Face, aim, request.DistancesMm[i], ref trail);
        }

        trail.Section("error");
        var error = PlacementError.Of(rates, request.TapeErrorMm, request.MeterErrorStops, (int)request.Readings, ref trail);
        NotePlacement(context, request, source!);
        var response = new EstimatePlacementErrorResponse
        {
            ErrorStops = error.ErrorStops,
            WorstStops = error.WorstStops,
            MeterStops = error.MeterStops,
            TapeStops = error.TapeStops,
            RatioFactor = error.RatioFactor,
            ModelRevision = ModelRevision.Current,
        };
        response.Distances.Add(rates.Select(rate => Write(error, rate, request.TapeErrorMm)));
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static DistanceError Write(PlacementError error, DistanceRate rate, double tapeMm)
    {
        var answer = new DistanceError
        {
            DistanceMm = rate.DistanceMm,
            ChangeFor10MmStops = rate.RateStopsPerMm * SpanMm,
            PointChangeFor10MmStops = rate.PointRateStopsPerMm * SpanMm,
            TapeStops = PlacementError.TapeStopsAt(rate, tapeMm),
        };
        if (error.AsDistanceMm(rate) is { } mm)
        {
            answer.ErrorMm = mm;
        }

        return answer;
    }

    private static void NotePlacement(RequestContext context, EstimatePlacementErrorRequest request, SourceRead source)
    {
        var nearest = request.DistancesMm.Min();
        if (request.TapeErrorMm > SmallTapeShare * nearest)
        {
            context.Advisories.Add(Advise.TapeErrorLarge(
                ErrorRoot[EstimatePlacementErrorRequest.TapeErrorMmFieldNumber], request.TapeErrorMm, nearest));
        }

        var axes = source.Face.Axes;
        context.NoteSources([source], [axes.Centre + axes.Facing * nearest], _ => ErrorSource.ToString());
    }
}

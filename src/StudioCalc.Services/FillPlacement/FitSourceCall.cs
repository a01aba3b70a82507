using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;
using FallOffModel = StudioCalc.Maths.FallOffModel;
using SourceFit = StudioCalc.Maths.SourceFit;

namespace StudioCalc.Services;

/// <content>FitSource.</content>
public sealed partial class FillPlacementAdapter
{
    // Distances whose ratio is smaller leave the radius to the rounding of the meter.
    private const double WideSpread = 2;

    // Models that fit within half a tenth of a stop are not told apart by a meter.
    private const double FitsAlikeStops = 0.05;

    private static readonly FieldPath FitRoot = FieldPath.Root(FitSourceRequest.Descriptor);
    private static readonly FieldPath FitReadings = FitRoot[FitSourceRequest.ReadingsFieldNumber];

    /// <inheritdoc/>
    public override Task<FitSourceResponse> FitSource(FitSourceRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Fit(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Fit(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static FitSourceResponse Fit<TTrail>(FitSourceRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var readings = ReadDistances(context, request, ref trail);
        context.ThrowIfRefused();

        var fits = SourceFit.All(readings, request.PredictDistancesMm, ref trail);
        NoteFits(context, request, fits);
        var response = new FitSourceResponse { ModelRevision = ModelRevision.Current };
        response.Fits.Add(fits.Select(fit => Write(fit, request.PredictDistancesMm)));
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static DistanceLight[] ReadDistances<TTrail>(RequestContext context, FitSourceRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var lights = new DistanceLight[request.Readings.Count];
        IncidentRead? first = null;
        var differ = false;
        for (var i = 0; i < lights.Length; i++)
        {
            trail.Section(FormattableString.Invariant($"reading {i}"));
            var path = FitReadings.At(i)[DistanceReading.ReadingFieldNumber];
            if (context.ReadIncident(request.Readings[i].Reading, path, ref trail) is not { } read)
            {
                continue;
            }

            lights[i] = DistanceLight.Of(request.Readings[i].DistanceMm, read.ValueIso100Stops, read.Constant, ref trail);
            first ??= read;
            differ |= read.Collector != first.Value.Collector || read.Constant != first.Value.Constant;
            if (read.IsFlash != first.Value.IsFlash)
            {
                context.Violations.Add(path.ToString(), RefusalReason.Conflict,
                    "Readings must be all of flash or all of light that stays on.");
            }
        }

        if (request.Readings.All(reading => reading.DistanceMm == request.Readings[0].DistanceMm))
        {
            context.Violations.Add(FitReadings.ToString(), RefusalReason.Conflict, "Readings at two distances at least are needed.");
        }

        if (differ)
        {
            context.Advisories.Add(Advise.ReceptorsDiffer());
        }

        return lights;
    }

    private static void NoteFits(RequestContext context, FitSourceRequest request, IReadOnlyList<SourceFit> fits)
    {
        var nearest = request.Readings.Min(reading => reading.DistanceMm);
        var farthest = request.Readings.Max(reading => reading.DistanceMm);
        if (farthest < WideSpread * nearest)
        {
            context.Advisories.Add(Advise.DistancesClose(FitReadings, farthest / nearest));
        }

        var path = FitRoot[FitSourceRequest.PredictDistancesMmFieldNumber];
        for (var i = 0; i < request.PredictDistancesMm.Count; i++)
        {
            if (request.PredictDistancesMm[i] < nearest || request.PredictDistancesMm[i] > farthest)
            {
                context.Advisories.Add(Advise.FitExtrapolated(path.ItemAt(i), request.PredictDistancesMm[i], nearest, farthest));
                break;
            }
        }

        var sized = fits.Where(fit => fit.SizeMm is not null).ToList();
        if (sized.Count == 2 && Math.Abs(sized[0].ResidualStops - sized[1].ResidualStops) < FitsAlikeStops)
        {
            context.Advisories.Add(Advise.ModelsFitAlike(Math.Abs(sized[0].ResidualStops - sized[1].ResidualStops)));
        }
    }

    private static V1.SourceFit Write(SourceFit fit, IReadOnlyList<double> distances)
    {
        var answer = new V1.SourceFit
        {
            Model = fit.Model switch
            {
                FallOffModel.SoftFace => V1.FallOffModel.SoftFace,
                FallOffModel.Beam => V1.FallOffModel.Beam,
                FallOffModel.Point => V1.FallOffModel.Point,
                _ => throw new ArgumentOutOfRangeException(nameof(fit)),
            },
            HasSolution = fit.HasSolution,
            ResidualStops = fit.ResidualStops,
        };
        answer.ResidualsStops.Add(fit.ResidualsStops);
        if (fit is { Model: FallOffModel.SoftFace, SizeMm: { } radius })
        {
            answer.RadiusMm = radius;
        }

        if (fit is { Model: FallOffModel.Beam, SizeMm: { } depth })
        {
            answer.OriginBehindMm = depth;
        }

        answer.Predicted.Add(fit.PredictedStops.Zip(distances, (stops, distance) =>
        {
            var light = new PredictedLight { DistanceMm = distance };
            if (stops is { } known)
            {
                light.OverFirstStops = known;
            }

            return light;
        }));
        return answer;
    }
}

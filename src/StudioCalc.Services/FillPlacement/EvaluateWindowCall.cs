using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>EvaluateWindow.</content>
public sealed partial class FillPlacementAdapter
{
    private static readonly FieldPath WindowRoot = FieldPath.Root(EvaluateWindowRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<EvaluateWindowResponse> EvaluateWindow(EvaluateWindowRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Evaluate(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Evaluate(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static EvaluateWindowResponse Evaluate<TTrail>(EvaluateWindowRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var path = WindowRoot[EvaluateWindowRequest.WindowFieldNumber];
        var glass = context.ReadGlass(request.Window, path);
        var sky = context.ReadSky(request.Sky, request.Window, path);
        var opening = request.Window.Opening(request.TableHeightMm);
        var places = context.ReadAll(request.Places, WindowRoot[EvaluateWindowRequest.PlacesFieldNumber]);
        var level = request.Reading is null || places[0] is not { } metered
            ? null
            : ReadWindow(context, request.Reading, at => Maths.WindowLight.At(opening, sky, glass, metered with { Collector = at }), ref trail);
        context.ThrowIfRefused();

        var response = new EvaluateWindowResponse { ModelRevision = ModelRevision.Current };
        var lights = new double[places.Count];
        for (var i = 0; i < lights.Length; i++)
        {
            lights[i] = Maths.WindowLight.At(opening, sky, glass, places[i]!.Value);
            trail.Section(request.Places[i].HasName ? request.Places[i].Name : FormattableString.Invariant($"place {i}"));
            var answer = WriteWindow(lights[i], lights[0], places[i]!.Value, places[0]!.Value, sky, level, i, ref trail);
            answer.Name = request.Places[i].HasName ? request.Places[i].Name : "";
            response.Places.Add(answer);
        }

        NoteWindow(context, request, opening, sky, places, lights);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static SourceLevel? ReadWindow<TTrail>(
        RequestContext context, Reading reading, Func<Collector, double> light, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var path = WindowRoot[EvaluateWindowRequest.ReadingFieldNumber];
        if (reading.Flash is not null)
        {
            context.Violations.Add(path[Reading.FlashFieldNumber].ToString(), RefusalReason.Conflict, "A window's light stays on; flash is none of it.");
            return null;
        }

        trail.Section("reading");
        if (context.ReadIncident(reading, path, ref trail) is not { } read)
        {
            return null;
        }

        var atMeter = light(read.Collector);
        if (atMeter > 0)
        {
            return SourceLevel.OfReading(read.IsFlash, read.ValueIso100Stops, read.Constant, read.Collector, atMeter, ref trail);
        }

        context.Violations.Add(path.ToString(), RefusalReason.Conflict, "No light of the window reaches the first place, where it was read.");
        return null;
    }

    private static V1.WindowLight WriteWindow<TTrail>(
        double light, double first, in WindowPoint at, in WindowPoint firstAt, WindowSky sky, SourceLevel? level, int index, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var field = FormattableString.Invariant($"places[{index}].");
        var answer = new V1.WindowLight();
        if (level is not null)
        {
            answer.IlluminanceLx = WindowShift.IlluminanceLx(light, level.Strength, ref trail, field + "illuminance_lx");
            if (answer.IlluminanceLx > 0)
            {
                answer.ExposureValueIso100Stops = Maths.LightLevel.FromIlluminance(
                    answer.IlluminanceLx,
                    at.Collector == Collector.Flat ? level.FlatConstant : level.DomeConstant,
                    ref trail,
                    field + "exposure_value_iso100_stops").ExposureValueIso100Stops;
            }
        }

        if (sky.OpenHorizontal is { } open)
        {
            answer.OutdoorShare = WindowShift.Share(light, open, ref trail, field + "outdoor_share");
        }

        if (light > 0 && first > 0)
        {
            answer.ChangeStops = WindowShift.ChangeStops(light, first, ref trail, field + "change_stops");
        }

        answer.InverseSquareChangeStops = WindowShift.InverseSquareStops(
            at.DistanceMm, firstAt.DistanceMm, ref trail, field + "inverse_square_change_stops");
        return answer;
    }

    private static void NoteWindow(
        RequestContext context,
        EvaluateWindowRequest request,
        WindowOpening opening,
        WindowSky sky,
        IReadOnlyList<WindowPoint?> places,
        double[] lights)
    {
        if (sky.Kind == Maths.SkyKind.Uniform)
        {
            context.Advisories.Add(Advise.SkyWithoutSun());
        }

        var shares = lights.Select(light => light / (sky.OpenHorizontal ?? Math.PI)).ToList();
        if (shares.Min() is var least && least < Advise.RoomLightShare)
        {
            context.Advisories.Add(Advise.RoomLightCounts(Place(shares.IndexOf(least)), least));
        }

        if (request.Reading is not null && lights.Length > 1)
        {
            context.Advisories.Add(Advise.SkyDrifts());
        }

        if (First(at => at.Collector == Collector.Dome) is { } dome)
        {
            context.Advisories.Add(Advise.DomeSeesWider(Place(dome)));
        }

        if (sky is { Kind: not Maths.SkyKind.Diffusion, BelowSkylineShare: 0 } && First(at => opening.SillOverMm(at.HeightMm) < 0) is { } low)
        {
            context.Advisories.Add(Advise.GroundTakenAsDark(Place(low), -opening.SillOverMm(places[low]!.Value.HeightMm)));
        }

        string Place(int index) => WindowRoot[EvaluateWindowRequest.PlacesFieldNumber].ItemAt(index);

        int? First(Func<WindowPoint, bool> fits)
        {
            for (var i = 0; i < places.Count; i++)
            {
                if (fits(places[i]!.Value))
                {
                    return i;
                }
            }

            return null;
        }
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>SimulateCooling.</content>
public sealed partial class FreshnessAdapter
{
    private const int UsualSamples = 61;

    private static readonly FieldPath CoolingRoot = FieldPath.Root(SimulateCoolingRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<SimulateCoolingResponse> SimulateCooling(SimulateCoolingRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(context);
        return Task.FromResult(SimulateWithWorking(request, CoolingRoot, context.CancellationToken));
    }

    private static SimulateCoolingResponse SimulateWithWorking(SimulateCoolingRequest request, FieldPath root, CancellationToken cancellation)
    {
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Simulate(request, root, cancellation, ref none);
        }

        var trail = StepTrail.Start();
        var response = Simulate(request, root, cancellation, ref trail);
        response.Working.Add(trail);
        return response;
    }

    private static SimulateCoolingResponse Simulate<TTrail>(
        SimulateCoolingRequest request, FieldPath root, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(null);
        var itemPath = root[SimulateCoolingRequest.ItemFieldNumber];
        if (request.Item.KindCase is not (FoodItem.KindOneofCase.Liquid or FoodItem.KindOneofCase.Film
            or FoodItem.KindOneofCase.Piece or FoodItem.KindOneofCase.IceCream))
        {
            context.Violations.Add(itemPath.ToString(), RefusalReason.Conflict,
                "Only a liquid, a film, a piece or ice cream has a temperature that can be followed.");
            context.ThrowIfRefused();
        }

        var followed = context.ReadFollowed(request.Item, request.Air, itemPath, root[SimulateCoolingRequest.AirFieldNumber]);
        var endsAt = followed is var (known, within) && request.EndsAt is not null
            ? context.Read(request.EndsAt, known.Body, within, root[SimulateCoolingRequest.EndsAtFieldNumber])
            : null;
        context.ThrowIfRefused();

        var (food, room) = followed!.Value;
        var response = new SimulateCoolingResponse
        {
            Model = HoldingWriter.ModelOf(food.Body, room).ToContract(),
            ModelRevision = ModelRevision.Current,
        };
        var seconds = request.Duration.ToSeconds();
        var samples = request.HasSamples ? (int)request.Samples : UsualSamples;
        var course = FoodCourse.Of(food.Body, room, cancellation);
        for (var i = 0; i < samples; i++)
        {
            response.Samples.Add(Sample(course.At(seconds * i / (samples - 1))));
        }

        trail.Section("end");
        trail.Given("Te", response.Samples[^1].SurfaceCelsius, "°C", course.IsSeries
            ? "solved: freshness (17), (18)"
            : "simulated: freshness (30), (31)", $"samples[{samples - 1}].surface_celsius");
        response.Facts = FactsWriter.Facts(food, room, ref trail);
        response.Events.Add(Events(FoodCourse.Of(food.Body, room, cancellation), food.Body, endsAt, request, response.Facts, seconds));
        context.NoteFood(food.Body, itemPath);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static CoolingSample Sample(FoodState state)
    {
        var sample = new CoolingSample
        {
            At = state.Seconds.ToDuration(),
            SurfaceCelsius = state.Surface,
            CoreCelsius = state.Core,
            MeanCelsius = state.Mean,
        };
        if (state.Plate is { } plate)
        {
            sample.PlateCelsius = plate;
        }

        return sample;
    }

    private static IEnumerable<CoolingEvent> Events(
        FoodCourse course, FoodBody body, SetPointRead? endsAt, SimulateCoolingRequest request, ThermalFacts facts, double seconds)
    {
        var marks = new List<(CoolingEventKind Kind, double Celsius)>();
        if (endsAt is not null)
        {
            marks.Add((CoolingEventKind.SetPoint, endsAt.Band.LikelyCelsius));
        }

        if (BodyReader.HasVapour(request.Item) && facts.HasSteamFromCelsius && body.StartCelsius > facts.SteamFromCelsius)
        {
            marks.Add((CoolingEventKind.SteamStops, facts.SteamFromCelsius));
        }

        if (body is ScoopBody scoop)
        {
            marks.Add((CoolingEventKind.GlossLost, BodyReader.GlossLostOf(request.Item.IceCream)));
            marks.Add((CoolingEventKind.Melting, scoop.Mix.FreezingCelsius));
        }

        var passed = HoldingTime.Until(course, [.. marks.Select(mark => new SetPointMark(mark.Celsius, body.StartCelsius >= mark.Celsius))], seconds);
        return marks.Zip(passed)
            .Where(found => found.Second is not null)
            .OrderBy(found => found.Second)
            .Select(found => HoldingWriter.Event(found.First.Kind, found.Second!.Value, found.First.Celsius));
    }
}

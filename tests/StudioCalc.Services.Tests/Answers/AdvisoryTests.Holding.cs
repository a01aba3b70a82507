using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>How long food keeps its looks.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> HoldingPairs = new()
    {
        [AdvisoryCode.WindowFromPractice] = (
            () => Holding(request => (request.Item, request.EndsAt) = (new() { ProfileId = "cut-avocado" }, null)),
            () => Holding(_ => { })),
        [AdvisoryCode.WindowIsWait] = (
            () => Holding(request => (request.Item, request.EndsAt) = (new() { ProfileId = "sliced-rare-meat-pinks" }, null)),
            () => Holding(request => (request.Item, request.EndsAt) = (new() { ProfileId = "sliced-rare-meat" }, null))),
        [AdvisoryCode.EvaporationAtItsEnd] = (
            () => Cooling(request => request.Item.Liquid.StartCelsius = 90.1),
            () => Cooling(request => request.Item.Liquid.StartCelsius = 90)),
        [AdvisoryCode.LooksNotSafety] = (
            () => Cooling(request => (request.Item.Liquid.StartCelsius, request.EndsAt) = (5.1, null)),
            () => Cooling(request => (request.Item.Liquid.StartCelsius, request.EndsAt) = (5, null))),
        [AdvisoryCode.NoDewForms] = (
            () => Holding(request => (request.Item, request.EndsAt) = (new() { Glass = new() { SurfaceCelsius = 9.6 } }, null)),
            () => Holding(request => (request.Item, request.EndsAt) = (new() { Glass = new() { SurfaceCelsius = 9.5 } }, null))),
        [AdvisoryCode.FilmTakesPlate] = (() => Film(plateCelsius: 20), () => Film(plateCelsius: 65)),
    };

    private static EstimateHoldingTimeResponse Film(double plateCelsius) => Holding(request =>
    {
        request.Item = new()
        {
            Film = new()
            {
                ThicknessMm = 2,
                DiameterMm = 90,
                StartCelsius = 70,
                Properties = new() { Given = new() { ConductivityWPerMK = 0.18, DensityKgPerM3 = 900, SpecificHeatJPerKgK = 2000 } },
                Plate = new() { MassG = 800, StartCelsius = plateCelsius },
            },
        };
        request.EndsAt = new() { ProfileId = "beef-fat" };
    });

    private static EstimateHoldingTimeResponse Holding(Action<EstimateHoldingTimeRequest> change)
    {
        var request = Examples.Holding();
        change(request);
        return Calls.Freshness.EstimateHoldingTime(request);
    }

    private static SimulateCoolingResponse Cooling(Action<SimulateCoolingRequest> change)
    {
        var request = Examples.Cooling();
        change(request);
        return Calls.Freshness.SimulateCooling(request);
    }
}

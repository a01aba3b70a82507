using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>Food safety, and what can hurt people about a plate.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> SafetyPairs = new()
    {
        [AdvisoryCode.SafetyClockOver] = (() => Warm(7200), () => Warm(7199)),
        [AdvisoryCode.SafetyClockRunning] = (() => Warm(7199), () => Warm(7200)),
        [AdvisoryCode.SafetyClockUnknown] = (() => Warm(60, request => Name(request, "uk-cold")), () => Warm(60)),
        [AdvisoryCode.NotForEating] = (
            () => Warm(60, request => request.NotForEating.Add(NotForEating.Undercooked)), () => Warm(7200)),
        [AdvisoryCode.AllergensAsDeclared] = (() => Warm(60, request => request.DeclaredAllergens.Add("sesame")), () => Warm(60)),
        [AdvisoryCode.RegimeAssumed] = (() => Warm(60, request => request.RegimeIds.Clear()), () => Warm(60)),
        [AdvisoryCode.HotPlates] = Hazard(SetHazard.HotPlates, SetHazard.ColdGlass),
        [AdvisoryCode.GlassMayCrack] = Hazard(SetHazard.ColdGlass, SetHazard.HotPlates),
        [AdvisoryCode.TorchOrAerosol] = Hazard(SetHazard.Aerosol, SetHazard.DryIce),
        [AdvisoryCode.DryIce] = Hazard(SetHazard.DryIce, SetHazard.Torch),
    };

    [Fact]
    public void FoodAdvisories_DeferToTheLocalCodeAndAProfessional()
    {
        foreach (var code in SafetyPairs.Keys)
        {
            var text = Advisories(SafetyPairs[code].Raises()).First(raised => raised.Code == code).Text;
            Assert.Contains(" come first", text.Replace("comes first", "come first", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.DoesNotContain("is safe", text, StringComparison.OrdinalIgnoreCase);
        }
    }

    private static (Func<IMessage> Raises, Func<IMessage> Quiet) Hazard(SetHazard hazard, SetHazard other) =>
        (() => Warm(60, request => request.Hazards.Add(hazard)), () => Warm(60, request => request.Hazards.Add(other)));

    private static void Name(CheckFoodSafetyRequest request, string regime)
    {
        request.RegimeIds.Clear();
        request.RegimeIds.Add(regime);
    }

    private static CheckFoodSafetyResponse Warm(int seconds, Action<CheckFoodSafetyRequest>? change = null)
    {
        var request = new CheckFoodSafetyRequest
        {
            Spells = { new SafetySpell { Duration = new Duration { Seconds = seconds }, StartCelsius = 22 } },
            RegimeIds = { "us-two-hours" },
            AirCelsius = 22,
        };
        change?.Invoke(request);
        return Calls.Freshness.CheckFoodSafety(request);
    }
}

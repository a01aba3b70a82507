using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes an answer of <c>PlaceFocus</c>.</summary>
internal static class PlaceFocusWriter
{
    public static PlaceFocusResponse Response(
        PlaceFocusRequest request, PlacementInput input, PlacementOutcome outcome, SensorRead? sensor)
    {
        var response = new PlaceFocusResponse { ModelRevision = ModelRevision.Current };
        var placement = Placement(request, input, outcome, sensor);
        if (outcome.Obstacle == Maths.DepthObstacle.None)
        {
            response.Solution = placement;
            return response;
        }

        response.NotReached = new()
        {
            Obstacle = DepthWriter.Obstacle(outcome.Obstacle),
            ShortfallMm = outcome.ShortfallMm,
            Nearest = placement,
        };
        response.NotReached.Remedies.Add(PlacementRemedies.For(input, outcome, DepthOfFieldAdapter.DefaultWavelengthUm)
            .Select(remedy => DepthWriter.Remedy(remedy, input.Range, sensor)));
        return response;
    }

    public static V1.FreshPlateSetting? FreshPlate(PlacementInput input, Maths.FreshPlateSetting? setting, SensorRead? sensor) => setting is null ? null : new()
    {
        Aperture = DepthWriter.Aperture(setting.Aperture.FNumber, setting.Aperture.SetFNumber, input.Range),
        EffectiveFNumber = setting.Aperture.EffectiveFNumber,
        Focus = OpticsWriter.Lens(setting.Lens, sensor),
        FocusOffsetMm = setting.OffsetMm,
    };

    private static FocusPlacement Placement(
        PlaceFocusRequest request, PlacementInput input, PlacementOutcome outcome, SensorRead? sensor)
    {
        var answer = new FocusPlacement
        {
            Focus = OpticsWriter.Lens(outcome.Lens, sensor),
            FocusOffsetMm = outcome.OffsetMm,
            Aperture = input.FNumber is null
                ? DepthWriter.Aperture(outcome.FNumber, outcome.FNumber, input.Range)
                : CameraWriter.Aperture(outcome.FNumber, input.Range.Scale),
            EffectiveFNumber = outcome.EffectiveFNumber,
            Zone = OpticsWriter.Zone(outcome.Lens, outcome.Zone),
            SlipForwardMm = outcome.SlipForwardMm,
            FreshPlateShiftMm = outcome.FreshPlateShiftMm,
            FreshPlateSharp = outcome.FreshPlateIsSharp,
            PermittedBlurUm = input.PermittedBlurMm * 1000,
        };
        if (outcome.SlipBackMm is { } back)
        {
            answer.SlipBackMm = back;
        }

        answer.Components.Add(outcome.Components.Select((blur, i) => Component(request.Components[i].Name, blur, sensor)));
        return answer;
    }

    private static ComponentSharpness Component(string name, ComponentBlur blur, SensorRead? sensor)
    {
        var answer = new ComponentSharpness
        {
            Name = name,
            NearOffsetMm = blur.NearOffsetMm,
            FarOffsetMm = blur.FarOffsetMm,
            DepthMm = blur.DepthMm,
            NearBlurUm = blur.NearBlurMm * 1000,
            FarBlurUm = blur.FarBlurMm * 1000,
            Sharp = blur.IsSharp,
            SharpShare = blur.SharpShare,
        };
        if (sensor is not null)
        {
            answer.ShareOfFrameHeight = Math.Max(blur.NearBlurMm, blur.FarBlurMm) / sensor.HeightMm;
        }

        return answer;
    }
}

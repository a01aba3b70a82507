using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <content>The sharp zone.</content>
public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> ZonePairs = new()
    {
        [AdvisoryCode.FocalLengthDiffers] = (
            () => Zone(request => request.Camera.Lens.FocalLengthMm = 120),
            () => Zone(request => request.Camera.Lens.ClearFocalLengthMm())),
        [AdvisoryCode.DiffractionSpoils] = (
            () => Zone(request => request.Aperture.Set.Mark = "f/22"),
            () => Zone(request => request.Aperture.Set.Mark = "f/16")),
        [AdvisoryCode.DiffractionCounts] = (
            () => Zone(request => request.Aperture.Set.Mark = "f/16"),
            () => Zone(request => request.Aperture.Set.Mark = "f/8")),
        [AdvisoryCode.BlurBelowPixel] = (
            () => Zone(request => request.PermittedBlur = new() { DiameterUm = 4 }, pixels: 8192),
            () => Zone(request => request.PermittedBlur = new() { DiameterUm = 5 }, pixels: 8192)),
    };

    private static EvaluateDepthOfFieldResponse Zone(Action<EvaluateDepthOfFieldRequest> change, uint? pixels = null)
    {
        var request = Examples.DepthOfField();
        if (pixels is { } count)
        {
            request.Camera.Sensor.LongSidePixels = count;
        }

        change(request);
        return Calls.DepthOfField.EvaluateDepthOfField(request);
    }
}

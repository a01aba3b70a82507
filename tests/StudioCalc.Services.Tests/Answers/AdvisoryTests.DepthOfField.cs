using Google.Protobuf;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed partial class AdvisoryTests
{
    private static readonly Dictionary<AdvisoryCode, (Func<IMessage> Raises, Func<IMessage> Quiet)> FocusPairs = new()
    {
        [AdvisoryCode.FreshPlateLeavesZone] = (
            () => Focus(request => request.FreshPlateHigherMm = 9),
            () => Focus(request => request.FreshPlateHigherMm = 2)),
        [AdvisoryCode.FocusSlipSmall] = (
            () => Focus(request => request.Aperture = new() { Set = new() { FNumber = 8.6 } }),
            () => Focus(request => request.Aperture = new() { Set = new() { FNumber = 8.9 } })),
        [AdvisoryCode.ComponentBlurred] = (
            () => Focus(request => request.Components[1].Importance = 0.5),
            () => Focus(request => request.Components[1].Importance = 0.49)),
        [AdvisoryCode.NoMarkHolds] = (
            () => Depth(StopScale.Whole),
            () => Depth(StopScale.Third)),
    };

    private static PlaceFocusResponse Focus(Action<PlaceFocusRequest> change)
    {
        var request = Examples.PlaceFocus();
        change(request);
        return Calls.DepthOfField.PlaceFocus(request);
    }

    // f/11.6 to f/14.4 hold it.
    private static SolveApertureResponse Depth(StopScale scale) => Calls.DepthOfField.SolveAperture(new()
    {
        Lens = new() { FocalLengthMm = 100 },
        Distances = new() { NearMm = 1000, FarMm = 1047, Origin = DistanceOrigin.EntrancePupil },
        PermittedBlur = new() { DiameterUm = 27.4 },
        Limits = new() { Scale = scale },
    });
}

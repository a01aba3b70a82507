using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>PlaceFocus.</content>
public sealed partial class DepthOfFieldAdapter
{
    private const double SmallSlipMm = 1;
    private const double WorthHolding = 0.5;

    private static readonly FieldPath PlaceRoot = FieldPath.Root(PlaceFocusRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<PlaceFocusResponse> PlaceFocus(PlaceFocusRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Place(request, PlaceRoot, ref none));
        }

        var trail = StepTrail.Start();
        var response = Place(request, PlaceRoot, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static PlaceFocusResponse Place<TTrail>(PlaceFocusRequest request, FieldPath root, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.Limits is { HasScale: true } ? request.Limits.Scale : null);
        var read = PlaceFocusReader.Read(context, request, root, ref trail);
        context.ThrowIfRefused();
        var (input, sensor) = read!;
        var outcome = Maths.Placement.Solve(input, ref trail);
        var response = PlaceFocusWriter.Response(request, input, outcome, sensor);
        var none = default(NoTrail);
        var airy = Diffraction.AiryDiscUm(outcome.EffectiveFNumber, DefaultWavelengthUm, ref none);
        if (outcome.Obstacle == Maths.DepthObstacle.None)
        {
            context.NoteDiffraction(airy, input.PermittedBlurMm, "solution.aperture");
            Note(context, request, root, input, outcome);
            response.FreshPlateSetting = outcome.FreshPlateIsSharp ? null
                : PlaceFocusWriter.FreshPlate(input, Maths.FreshPlateSetting.For(input, outcome.FreshPlateShiftMm, DefaultWavelengthUm), sensor);
        }

        context.NoteFineBlur(input.PermittedBlurMm, sensor, root[PlaceFocusRequest.PermittedBlurFieldNumber]);
        response.Advisories.Add(context.Advisories);
        return response;
    }

    private static void Note(
        RequestContext context, PlaceFocusRequest request, FieldPath root, PlacementInput input, PlacementOutcome outcome)
    {
        if (!outcome.FreshPlateIsSharp)
        {
            context.Advisories.Add(Advise.FreshPlateLeavesZone(root[PlaceFocusRequest.FreshPlateHigherMmFieldNumber], outcome.FreshPlateShiftMm));
        }

        var slip = Math.Min(outcome.SlipForwardMm, outcome.SlipBackMm ?? double.PositiveInfinity);
        if (slip < SmallSlipMm)
        {
            context.Advisories.Add(Advise.FocusSlipSmall(slip));
        }

        for (var i = 0; i < outcome.Components.Count; i++)
        {
            if (i != input.Main && !outcome.Components[i].IsSharp
                && PlaceFocusReader.ImportanceOf(request.Components[i]) >= WorthHolding)
            {
                context.Advisories.Add(Advise.ComponentBlurred(root[PlaceFocusRequest.ComponentsFieldNumber].ItemAt(i), outcome.Components[i].SharpShare));
            }
        }
    }
}

using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Combines lights.</content>
public sealed partial class LightingRatioAdapter
{
    private static readonly FieldPath CombinePath = FieldPath.Root(CombineReadingsRequest.Descriptor);

    /// <inheritdoc/>
    public override Task<CombineReadingsResponse> CombineReadings(CombineReadingsRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!request.IncludeWorking)
        {
            var none = default(NoTrail);
            return Task.FromResult(Combine(request, ref none));
        }

        var trail = StepTrail.Start();
        var response = Combine(request, ref trail);
        response.Working.Add(trail);
        return Task.FromResult(response);
    }

    private static CombineReadingsResponse Combine<TTrail>(CombineReadingsRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var context = new RequestContext(request.HasScale ? request.Scale : null);
        var read = new ReadLight<MeteredLight>[request.Lights.Count];
        for (var i = 0; i < read.Length; i++)
        {
            trail.Section(request.Lights[i].Name);
            var path = CombinePath[CombineReadingsRequest.LightsFieldNumber].At(i)[NamedLight.ReadingFieldNumber];
            read[i] = context.ReadAlone(request.Lights[i].Reading, path, ref trail) ?? default;
        }

        var settings = context.Read(request.Settings, CombinePath[CombineReadingsRequest.SettingsFieldNumber]);
        context.ThrowIfRefused();

        context.NoteReceptors(read);
        var combination = Combination.Of(
            Array.ConvertAll(read, light => light.Level), settings!.Value, request.LensLossStops, ref trail);
        var response = new CombineReadingsResponse
        {
            TotalOverSettingStops = combination.TotalOverSettingStops,
            TotalAperture = CameraWriter.Aperture(combination.FNumber, context.Scale),
            FlashShare = combination.FlashShare,
            ModelRevision = ModelRevision.Current,
        };
        response.Shares.Add(request.Lights.Zip(combination.Parts, (light, part) =>
            new LightShare { Name = light.Name, OverSettingStops = part.OverSettingStops, Share = part.Share }));
        response.Advisories.Add(context.Advisories);
        return response;
    }
}

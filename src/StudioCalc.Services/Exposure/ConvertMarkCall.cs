using Grpc.Core;
using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <content>Converts a mark.</content>
public sealed partial class ExposureAdapter
{
    private static readonly FieldPath ConvertRoot = FieldPath.Root(ConvertMarkRequest.Descriptor);

    private static readonly Maths.StopScale[] DialScales = [Maths.StopScale.Whole, Maths.StopScale.Half, Maths.StopScale.Third];

    /// <inheritdoc/>
    public override Task<ConvertMarkResponse> ConvertMark(ConvertMarkRequest request, ServerCallContext context)
    {
        ArgumentNullException.ThrowIfNull(request);
        var gathered = new RequestContext(null);
        var response = new ConvertMarkResponse { ModelRevision = ModelRevision.Current };
        switch (request.ValueCase)
        {
            case ConvertMarkRequest.ValueOneofCase.Aperture:
                Write(response, aperture: gathered.Read(request.Aperture, ConvertRoot[ConvertMarkRequest.ApertureFieldNumber]));
                break;
            case ConvertMarkRequest.ValueOneofCase.ApertureValueStops:
                Write(response, aperture: AdditiveValues.FNumber(request.ApertureValueStops));
                break;
            case ConvertMarkRequest.ValueOneofCase.ShutterSpeed:
                Write(response, timeS: gathered.Read(request.ShutterSpeed, ConvertRoot[ConvertMarkRequest.ShutterSpeedFieldNumber]));
                break;
            case ConvertMarkRequest.ValueOneofCase.TimeValueStops:
                Write(response, timeS: AdditiveValues.TimeS(request.TimeValueStops));
                break;
            case ConvertMarkRequest.ValueOneofCase.Iso:
                Write(response, iso: gathered.Read(request.Iso, ConvertRoot[ConvertMarkRequest.IsoFieldNumber]));
                break;
            default:
                Write(response, iso: AdditiveValues.Iso(request.SpeedValueStops));
                break;
        }

        gathered.ThrowIfRefused();
        response.Advisories.Add(gathered.Advisories);
        return Task.FromResult(response);
    }

    private static void Write(ConvertMarkResponse response, double? aperture = null, double? timeS = null, double? iso = null)
    {
        if (aperture is { } N)
        {
            response.Apertures.Add(DialScales.Append(Maths.StopScale.Tenth).Select(scale => CameraWriter.Aperture(N, scale)));
            response.AdditiveValueStops = AdditiveValues.OfFNumber(N);
        }
        else if (timeS is { } t)
        {
            response.ShutterSpeeds.Add(DialScales.Select(scale => CameraWriter.ShutterSpeed(t, scale)));
            response.AdditiveValueStops = AdditiveValues.OfTimeS(t);
        }
        else if (iso is { } S)
        {
            response.Isos.Add(DialScales.Select(scale => CameraWriter.Iso(S, scale)));
            response.AdditiveValueStops = AdditiveValues.OfIso(S);
        }
    }
}

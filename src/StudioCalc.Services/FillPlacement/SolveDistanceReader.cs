using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What <c>SolveDistance</c> calculates with: the wanted light is that of the face by unit luminance.</summary>
internal sealed record DistanceRead(
    SourceRead Source, LineScan Scan, double Wanted, double? WantedChangeStops, double NearestMm, double FarthestMm, double BandStops);

/// <summary>Reads a request of <c>SolveDistance</c>.</summary>
internal static class SolveDistanceReader
{
    private const double UsualBandStops = 0.1;

    private static readonly FieldPath Root = FieldPath.Root(SolveDistanceRequest.Descriptor);
    private static readonly FieldPath SourcePath = Root[SolveDistanceRequest.SourceFieldNumber];
    private static readonly FieldPath ReadingPath = Root[SolveDistanceRequest.ReadingFieldNumber];

    /// <summary>Reads the request; null after noting a bad field.</summary>
    public static DistanceRead? Read<TTrail>(RequestContext context, SolveDistanceRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("source");
        var source = context.Read(request.Source, SourcePath, ref trail);
        var receiver = context.ReadLineReceiver(request.Receiver, request.Source, source, Root[SolveDistanceRequest.ReceiverFieldNumber]);
        var range = context.Read(request.Distances, Root[SolveDistanceRequest.DistancesFieldNumber]);
        trail.Section("wanted");
        var wanted = request.Reading is null ? null : Wanted(context, request, source, receiver, ref trail);
        if (source is null || receiver is not { } at || range is not { } distances || (request.Reading is not null && wanted is null))
        {
            return null;
        }

        var line = new LightLine(source.Face, request.Source.Pose.AimPoint.ToVector(), at);
        var now = line.Light(line.NowMm);
        if (request.HasChangeStops && !(now > 0))
        {
            context.Violations.Add(Root[SolveDistanceRequest.ChangeStopsFieldNumber].ToString(), RefusalReason.Conflict,
                "None of the source's light reaches the receiver where it stands now, so that there is nothing to change: give a reading.");
            return null;
        }

        var light = wanted ?? WantedLight.OfChange(now, request.ChangeStops, ref trail);
        double? change = request.HasChangeStops ? request.ChangeStops
            : now > 0 ? WantedLight.ChangeStops(light, now, ref trail)
            : null;
        return new(
            source, new LineScan(line), light, change, distances.NearestMm, distances.FarthestMm,
            request.HasBandStops ? request.BandStops : UsualBandStops);
    }

    private static double? Wanted<TTrail>(
        RequestContext context, SolveDistanceRequest request, SourceRead? source, LineReceiver? receiver, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (request.Source.Calibration is null)
        {
            context.Violations.Add(SourcePath[LightSource.CalibrationFieldNumber].ToString(), RefusalReason.Required,
                "A wanted reading needs to know how bright the source is.");
        }

        var read = context.ReadAt(request.Reading, receiver, ReadingPath, ref trail);
        if (source?.Level is not { } level || !context.IsKind(request.Reading, level.IsFlash, ReadingPath) || read is not { } wanted)
        {
            return null;
        }

        var amount = WantedLight.Amount(
            wanted.ValueIso100Stops, wanted.Constant, underStops: 0, timeS: 1, ref trail);
        return WantedLight.OfAmount(amount, level, ref trail);
    }
}

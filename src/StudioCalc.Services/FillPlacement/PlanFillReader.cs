using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What <c>PlanFill</c> calculates with.</summary>
internal sealed record FillRead(SourceRead Source, FillInput Input, double MeterIso);

/// <summary>Reads a request of <c>PlanFill</c>.</summary>
internal static class PlanFillReader
{
    private const double UsualBandStops = 0.1;
    private const double UsualPlateMm = 280;
    private const double UsualIso = 100;

    private static readonly FieldPath Root = FieldPath.Root(PlanFillRequest.Descriptor);
    private static readonly FieldPath SourcePath = Root[PlanFillRequest.SourceFieldNumber];
    private static readonly FieldPath IsoPath = SourcePath[LightSource.CalibrationFieldNumber][SourceCalibration.ReadingFieldNumber][
        CalibrationReading.ReadingFieldNumber][Reading.FlashFieldNumber][FlashReading.SettingsFieldNumber][FlashSettings.IsoFieldNumber];

    /// <summary>Reads the request; null after noting a bad field.</summary>
    public static FillRead? Read<TTrail>(RequestContext context, PlanFillRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("source");
        var source = context.Read(request.Source, SourcePath, ref trail);
        var power = Power(context, request.Source);
        var receiver = context.ReadLineReceiver(request.Receiver, request.Source, source, Root[PlanFillRequest.ReceiverFieldNumber]);
        var powers = PlanFillPowers.Read(context, request, Root);
        (double NearestMm, double FarthestMm)? range = request.Distances is null
            ? (DistanceSolver.LeastMm, DistanceSolver.MostMm)
            : context.Read(request.Distances, Root[PlanFillRequest.DistancesFieldNumber]);
        trail.Section("target");
        var target = PlanFillTarget.Read(context, request, receiver, Root, ref trail);
        if (source?.Level is not { } level || power is not { } used || receiver is not { } at || powers is null
            || range is not { } distances || target is not { } exposure)
        {
            return null;
        }

        return new(source, new()
        {
            Face = source.Face,
            Aim = request.Source.Pose.AimPoint.ToVector(),
            RollDeg = request.Source.Pose.RollDeg,
            Receiver = at,
            Directions = [.. request.Directions.Select(direction => (direction.ElevationDeg, direction.AzimuthDeg))],
            PowersBelowFullStops = powers,
            FullStrength = level.Brighter(used).Strength,
            WantedLxS = exposure,
            NearestMm = distances.NearestMm,
            FarthestMm = distances.FarthestMm,
            DistancesMm = request.DistanceList is { } list ? [.. list.DistancesMm.Distinct().Order()] : null,
            BandStops = request.HasBandStops ? request.BandStops : UsualBandStops,
            PlateDiameterMm = request.HasPlateDiameterMm ? request.PlateDiameterMm : UsualPlateMm,
            EdgeHeightMm = request.HasEdgeHeightMm ? request.EdgeHeightMm : null,
            Preference = request.HasPreference ? ToMaths(request.Preference) : Maths.FillPreference.Softer,
            LeastSubtenseDeg = request.HasLeastSubtenseDeg ? request.LeastSubtenseDeg : null,
            LargestFallOffStops = request.HasLargestFallOffStops ? request.LargestFallOffStops : null,
        }, MeterIso(context, request.Source));
    }

    // The power at which the source's brightness is told.
    private static double? Power(RequestContext context, LightSource source)
    {
        var path = SourcePath[LightSource.CalibrationFieldNumber];
        if (source.Calibration is null)
        {
            context.Violations.Add(path.ToString(), RefusalReason.Required, "A plan needs a flash reading of the source at a known power.");
            return null;
        }

        if (source.Calibration.Reading is not { } reading)
        {
            context.Violations.Add(path[SourceCalibration.LuminanceCdPerM2FieldNumber].ToString(), RefusalReason.Conflict,
                "A plan needs a flash reading of the source at a known power.");
            return null;
        }

        var at = path[SourceCalibration.ReadingFieldNumber];
        if (!context.IsKind(reading.Reading, isFlash: true, at[CalibrationReading.ReadingFieldNumber]))
        {
            return null;
        }

        if (reading.Power is null)
        {
            context.Violations.Add(at[CalibrationReading.PowerFieldNumber].ToString(), RefusalReason.Required,
                "A plan needs the power at which the source was read.");
            return null;
        }

        // Reading the source has noted a bad one already.
        return context.Silent().Read(source.Power ?? reading.Power, at[CalibrationReading.PowerFieldNumber]);
    }

    private static double MeterIso(RequestContext context, LightSource source)
    {
        var settings = source.Calibration?.Reading?.Reading.Flash?.Settings;
        return settings is null ? UsualIso : context.Silent().Read(settings.Iso, IsoPath) ?? UsualIso;
    }

    private static Maths.FillPreference ToMaths(V1.FillPreference preference) => preference switch
    {
        V1.FillPreference.Softer => Maths.FillPreference.Softer,
        V1.FillPreference.MoreEven => Maths.FillPreference.MoreEven,
        V1.FillPreference.LeastMovement => Maths.FillPreference.LeastMovement,
        _ => throw new ArgumentOutOfRangeException(nameof(preference)),
    };
}

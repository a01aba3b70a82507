using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads a balance request as the maths' input, with the rules that hold between its fields.</summary>
internal static class BalanceReader
{
    private static readonly FieldPath Root = FieldPath.Root(BalanceFillRequest.Descriptor);
    private static readonly FieldPath BackPath = Root[BalanceFillRequest.BackLightFieldNumber];
    private static readonly FieldPath CameraPath = Root[BalanceFillRequest.CameraFieldNumber];

    /// <summary>Reads the request, or returns null after noting every bad field.</summary>
    public static BalanceInput? Read<TTrail>(RequestContext context, BalanceFillRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("back light");
        var back = Back(context, request.BackLight, ref trail);
        var fills = Fills(context, request, ref trail);
        var (shutterSpeed, iso) = Held(context, request);
        var limits = context.ReadSyncedLimits(request.Camera, CameraPath);
        if (iso is not null && limits is not null)
        {
            HeldIso(context, iso.Value, limits);
        }

        Preference(context, request);
        if (back is not { } backLight || context.Violations.Any)
        {
            return null;
        }

        if (fills.Exists(fill => fill.Light.Receptor != backLight.Receptor || fill.Light.Constant != backLight.Constant))
        {
            context.Advisories.Add(Advise.ReceptorsDiffer());
        }

        var first = fills[0].Head;
        return new()
        {
            Back = backLight.Level,
            Fill = FlashSum.Of([.. fills.Select(fill => fill.Light.Level)], ref trail),
            BackOverFillStops = request.BackOverFillStops,
            Placed = request.Placement.Light == V1.PlacedLight.Back ? Maths.PlacedLight.Back : Maths.PlacedLight.Fill,
            PlacedOverSettingStops = request.Placement.OverSettingStops,
            ShutterSpeedS = shutterSpeed!.Value,
            Iso = iso!.Value,
            LensLossStops = request.LensLossStops,
            Scale = context.Scale,
            PowerBelowFullStops = first.PowerBelowFullStops,
            LowestPowerBelowFullStops = first.LowestPowerBelowFullStops,
            PowerScale = first.PowerScale,
            FurtherHeads = [.. fills.Skip(1).Select(fill => fill.Head)],
            FiltersAtHandStops = [.. request.FiltersAtHand.Select(LossStops)],
            SyncSpeedS = limits!.SyncSpeedS!.Value,
            SlowestShutterSpeedS = limits.SlowestShutterSpeedS,
            WidestFNumber = limits.WidestFNumber,
            SmallestFNumber = limits.SmallestFNumber,
            LowestIso = limits.LowestIso,
            HighestIso = limits.HighestIso,
        };
    }

    private static ReadLight<Maths.LightLevel>? Back<TTrail>(RequestContext context, Reading reading, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (reading.Continuous is { } continuous)
        {
            return context.Read(continuous, BackPath[Reading.ContinuousFieldNumber], ref trail);
        }

        context.Violations.Add(BackPath[Reading.FlashFieldNumber].ToString(), RefusalReason.Conflict,
            "The back light is light that stays on: give a continuous reading.");
        return null;
    }

    // All fills, or fewer after noting a bad field.
    private static List<ReadFill> Fills<TTrail>(RequestContext context, BalanceFillRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var fills = new List<ReadFill>(1 + request.FurtherFills.Count);
        trail.Section("fill");
        Add(context.Read(request.Fill, Root[BalanceFillRequest.FillFieldNumber], ref trail));
        for (var i = 0; i < request.FurtherFills.Count; i++)
        {
            trail.Section("further fill");
            Add(context.Read(request.FurtherFills[i], Root[BalanceFillRequest.FurtherFillsFieldNumber].At(i), ref trail));
        }

        return fills;

        void Add(ReadFill? fill)
        {
            if (fill is { } known)
            {
                fills.Add(known);
            }
        }
    }

    private static double LossStops(Filter filter)
    {
        var none = default(NoTrail);
        return LossReader.ReadLossStops([filter], ref none);
    }

    private static void HeldIso(RequestContext context, double iso, CameraLimits limits)
    {
        if (iso < limits.LowestIso)
        {
            context.Violations.Add(CameraPath[Camera.LowestIsoFieldNumber].ToString(), RefusalReason.Conflict, "The ISO that is held is lower.");
        }

        if (iso > limits.HighestIso)
        {
            context.Violations.Add(CameraPath[Camera.HighestIsoFieldNumber].ToString(), RefusalReason.Conflict, "The ISO that is held is higher.");
        }
    }

    // What is not given is held as the back light was read.
    private static (double? ShutterSpeedS, double? Iso) Held(RequestContext context, BalanceFillRequest request)
    {
        var read = request.BackLight.Continuous?.Settings;
        var seen = context.Silent(); // reading the back light has noted its bad marks already
        var readPath = BackPath[Reading.ContinuousFieldNumber][ContinuousReading.SettingsFieldNumber];
        var speed = request.ShutterSpeed is not null
            ? context.Read(request.ShutterSpeed, Root[BalanceFillRequest.ShutterSpeedFieldNumber])
            : read is not null ? seen.Read(read.ShutterSpeed, readPath[V1.CameraSettings.ShutterSpeedFieldNumber]) : null;
        var iso = request.Iso is not null
            ? context.Read(request.Iso, Root[BalanceFillRequest.IsoFieldNumber])
            : read is not null ? seen.Read(read.Iso, readPath[V1.CameraSettings.IsoFieldNumber]) : null;
        if (request.BackLight.Continuous is not null && read is null)
        {
            Require(context, request.ShutterSpeed, Root[BalanceFillRequest.ShutterSpeedFieldNumber]);
            Require(context, request.Iso, Root[BalanceFillRequest.IsoFieldNumber]);
        }

        return (speed, iso);
    }

    private static void Preference(RequestContext context, BalanceFillRequest request)
    {
        for (var i = 1; i < request.Preference.Count; i++)
        {
            if (request.Preference.IndexOf(request.Preference[i]) < i)
            {
                context.Violations.Add(Root[BalanceFillRequest.PreferenceFieldNumber].ItemAt(i), RefusalReason.DoubledField, "Stands in the list already.");
            }
        }
    }

    private static void Require(RequestContext context, object? given, FieldPath path)
    {
        if (given is null)
        {
            context.Violations.Add(
                path.ToString(), RefusalReason.Required, "Must be given unless the back light's reading is given as settings.");
        }
    }
}

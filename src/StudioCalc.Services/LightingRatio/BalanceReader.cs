using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads a balance request as the maths' input, with the rules that hold between its fields.</summary>
internal static class BalanceReader
{
    private const double DefaultLowestPowerBelowFullStops = 7;

    private static readonly FieldPath Root = FieldPath.Root(BalanceFillRequest.Descriptor);
    private static readonly FieldPath BackPath = Root[BalanceFillRequest.BackLightFieldNumber];
    private static readonly FieldPath FillPath = Root[BalanceFillRequest.FillFieldNumber];
    private static readonly FieldPath CameraPath = Root[BalanceFillRequest.CameraFieldNumber];

    /// <summary>Reads the request, or returns null after noting every bad field.</summary>
    public static BalanceInput? Read<TTrail>(RequestContext context, BalanceFillRequest request, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("back light");
        var back = Back(context, request.BackLight, ref trail);
        trail.Section("fill");
        var fill = Fill(context, request.Fill.Reading, ref trail);
        var (power, lowest) = Powers(context, request.Fill);
        var (shutterSpeed, iso) = Held(context, request);
        var (sync, slowest) = ShutterLimits(context, request.Camera);
        var (widest, smallest) = ApertureLimits(context, request.Camera);
        Preference(context, request);
        if (back is not { } backLight || fill is not { } flash || context.Violations.Any)
        {
            return null;
        }

        if (backLight.Receptor != flash.Receptor || backLight.Constant != flash.Constant)
        {
            context.Advisories.Add(Advise.ReceptorsDiffer());
        }

        return new()
        {
            Back = backLight.Level,
            Fill = flash.Level,
            BackOverFillStops = request.BackOverFillStops,
            Placed = request.Placement.Light == V1.PlacedLight.Back ? Maths.PlacedLight.Back : Maths.PlacedLight.Fill,
            PlacedOverSettingStops = request.Placement.StopsOverSetting,
            ShutterSpeedS = shutterSpeed!.Value,
            Iso = iso!.Value,
            LensLossStops = request.LensLossStops,
            Scale = context.Scale,
            PowerBelowFullStops = power!.Value,
            LowestPowerBelowFullStops = lowest!.Value,
            PowerScale = request.Fill.HasPowerScale ? request.Fill.PowerScale.ToMaths() : Maths.StopScale.Tenth,
            SyncSpeedS = sync!.Value,
            SlowestShutterSpeedS = slowest!.Value,
            WidestFNumber = widest!.Value,
            SmallestFNumber = smallest!.Value,
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

    private static ReadLight<FlashLevel>? Fill<TTrail>(RequestContext context, Reading reading, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var path = FillPath[FlashFill.ReadingFieldNumber];
        if (reading.Flash is not { } flash)
        {
            context.Violations.Add(path[Reading.ContinuousFieldNumber].ToString(), RefusalReason.Conflict,
                "The fill is flash: give a flash reading.");
            return null;
        }

        if (flash.IncludesAmbient)
        {
            context.Violations.Add(path[Reading.FlashFieldNumber][FlashReading.IncludesAmbientFieldNumber].ToString(),
                RefusalReason.Conflict, "The flash must be read alone: shade the meter from the back light, or read at a faster shutter speed.");
        }

        return context.Read(flash, path[Reading.FlashFieldNumber], ref trail);
    }

    private static (double? Power, double? Lowest) Powers(RequestContext context, FlashFill fill)
    {
        var power = context.Read(fill.Power, FillPath[FlashFill.PowerFieldNumber]);
        var lowest = fill.LowestPower is null
            ? DefaultLowestPowerBelowFullStops
            : context.Read(fill.LowestPower, FillPath[FlashFill.LowestPowerFieldNumber]);
        if (power > lowest)
        {
            context.Violations.Add(FillPath[FlashFill.PowerFieldNumber].ToString(), RefusalReason.Conflict,
                "The head stands below its lowest power; state the lowest power of this head.");
        }

        return (power, lowest);
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

    private static (double? SyncS, double? SlowestS) ShutterLimits(RequestContext context, Camera camera)
    {
        var sync = context.Read(camera.SyncSpeed, CameraPath[Camera.SyncSpeedFieldNumber]);
        var slowest = camera.SlowestShutterSpeed is null
            ? double.PositiveInfinity
            : context.Read(camera.SlowestShutterSpeed, CameraPath[Camera.SlowestShutterSpeedFieldNumber]);
        if (slowest < sync)
        {
            context.Violations.Add(CameraPath[Camera.SlowestShutterSpeedFieldNumber].ToString(), RefusalReason.Conflict,
                "Must not be faster than the sync speed.");
        }

        return (sync, slowest);
    }

    private static (double? Widest, double? Smallest) ApertureLimits(RequestContext context, Camera camera)
    {
        var widest = camera.WidestAperture is null
            ? Marks.Aperture.Find("0.7", Maths.StopScale.Whole)!.Value
            : context.Read(camera.WidestAperture, CameraPath[Camera.WidestApertureFieldNumber]);
        var smallest = camera.SmallestAperture is null
            ? Marks.Aperture.Find("90", Maths.StopScale.Whole)!.Value
            : context.Read(camera.SmallestAperture, CameraPath[Camera.SmallestApertureFieldNumber]);
        if (widest > smallest)
        {
            context.Violations.Add(CameraPath[Camera.SmallestApertureFieldNumber].ToString(), RefusalReason.Conflict,
                "Must not be wider than the widest aperture.");
        }

        return (widest, smallest);
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

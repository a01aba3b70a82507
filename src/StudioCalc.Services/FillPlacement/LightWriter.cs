using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes the light at receivers.</summary>
internal static class LightWriter
{
    private const double UsualIso = 100;

    /// <summary>The light at each receiver, told against one of them. The trail follows that one.</summary>
    public static IEnumerable<ReceivedLight> Write<TTrail>(
        IReadOnlyList<LightReceiver> asked,
        IReadOnlyList<SourceRead> sources,
        IReadOnlyList<LightPoint?> receivers,
        int reference,
        Maths.CameraSettings? settings,
        Maths.StopScale scale,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var sums = new (ReceivedLight Answer, double? All)[receivers.Count];
        var none = default(NoTrail);
        for (var i = 0; i < sums.Length; i++)
        {
            var name = asked[i].HasName ? asked[i].Name : "";
            sums[i] = i == reference
                ? Receive(name, sources, receivers[i]!.Value, settings, scale, $"receivers[{i}].", ref trail)
                : Receive(name, sources, receivers[i]!.Value, settings, scale, "", ref none);
        }

        var against = sums[reference].All;
        foreach (var (answer, all) in sums)
        {
            if (all > 0 && against > 0)
            {
                answer.OverReferenceStops = Math.Log2(all.Value / against.Value);
            }
        }

        return sums.Select(sum => sum.Answer);
    }

    private static (ReceivedLight Answer, double? All) Receive<TTrail>(
        string name,
        IReadOnlyList<SourceRead> sources,
        in LightPoint at,
        Maths.CameraSettings? settings,
        Maths.StopScale scale,
        string field,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var answer = new ReceivedLight { Name = name };
        var metered = new double[sources.Count];
        var sum = default(LightSum);
        for (var i = 0; i < metered.Length; i++)
        {
            var source = sources[i];
            trail.Section(source.Name.Length > 0 ? source.Name : FormattableString.Invariant($"source {i}"));
            metered[i] = source.Face.Light(at, ref trail);
            var part = View(source, at, metered[i], $"{field}sources[{i}].", ref trail);
            answer.Sources.Add(part);
            if (source.Level is not { } level)
            {
                continue;
            }

            var amount = level.At(metered[i], ref trail);
            metered[i] = level.Metered(amount, at.Collector, ref trail);
            sum = sum.With(level.IsFlash, amount, metered[i]);
            if (level.IsFlash)
            {
                part.ExposureLxS = amount;
            }
            else
            {
                part.IlluminanceLx = amount;
            }
        }

        trail.Section("sum");
        Sum(answer, sources, sum, settings, scale, field, ref trail);
        return (answer, Share(answer, sources, metered, sum, settings));
    }

    private static SourceLight View<TTrail>(SourceRead source, in LightPoint at, double light, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var face = source.Face;
        var part = new SourceLight
        {
            Name = source.Name,
            DistanceMm = trail.Given("d", (face.Axes.Centre - at.Place).Length, "mm", "distance to the centre", field + "distance_mm"),
            SubtenseDeg = FaceView.SubtenseDeg(face, at.Place),
            DarkReason = light > 0 ? DarkReason.Unspecified
                : face.IsBefore(at.Place) ? DarkReason.FacesAway
                : DarkReason.BehindSource,
        };
        if (!face.IsPoint)
        {
            part.ConfigurationFactor = FaceView.Share(face, light, ref trail, field + "configuration_factor");
            if (FaceView.PointOverstatesStops(face, at) is { } stops)
            {
                part.PointOverstatesStops = stops;
            }
        }

        return part;
    }

    private static void Sum<TTrail>(
        ReceivedLight answer,
        IReadOnlyList<SourceRead> sources,
        LightSum sum,
        Maths.CameraSettings? settings,
        Maths.StopScale scale,
        string field,
        ref TTrail trail)
        where TTrail : struct, ITrail
    {
        if (sources.Any(source => source.Level?.IsFlash == true))
        {
            answer.ExposureLxS = trail.Given("Hf", sum.FlashLxS, "lx s", "the sum of H of flashes", field + "exposure_lx_s");
        }

        if (sources.Any(source => source.Level?.IsFlash == false))
        {
            answer.IlluminanceLx = trail.Given("Hc", sum.SteadyLx, "lx", "the sum of H of sources that stay on", field + "illuminance_lx");
        }

        if (sum.Flash > 0)
        {
            answer.FlashMeters = CameraWriter.Aperture(sum.FlashFNumber(settings?.Iso ?? UsualIso), scale);
        }

        if (settings is { } set && sum.Flash + sum.Steady > 0)
        {
            answer.OverSettingsStops = sum.StopsOver(set, ref trail, field + "over_settings_stops");
        }
    }

    // All light as one number, and the share of each source in it; null where light that stays on and flash cannot be added.
    private static double? Share(
        ReceivedLight answer, IReadOnlyList<SourceRead> sources, double[] metered, LightSum sum, Maths.CameraSettings? settings)
    {
        if (settings is null && sources.Any(source => source.Level?.IsFlash == true) && sources.Any(source => source.Level?.IsFlash == false))
        {
            return null;
        }

        var time = settings?.ShutterSpeedS ?? 1;
        var all = sources[0].Level is null ? metered[0] : sum.At(time);
        for (var i = 0; all > 0 && i < metered.Length; i++)
        {
            answer.Sources[i].LightShare = (sources[i].Level?.IsFlash == false ? time : 1) * metered[i] / all;
        }

        return all;
    }
}

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
            var light = source.Face.Light(at, ref trail);
            var part = View(source.Face, at, light);
            answer.Sources.Add(part);
            metered[i] = light;
            if (source.Level is not { } level)
            {
                continue;
            }

            var amount = level.At(light, ref trail);
            metered[i] = level.Metered(amount, at.Collector, ref trail);
            sum = sum.With(level.IsFlash, metered[i]);
            if (level.IsFlash)
            {
                part.ExposureLxS = amount;
                answer.ExposureLxS += amount;
            }
            else
            {
                part.IlluminanceLx = amount;
                answer.IlluminanceLx += amount;
            }
        }

        trail.Section("sum");
        Sum(answer, sum, settings, scale, field, ref trail);
        return (answer, Share(answer, sources, metered, sum, settings));
    }

    private static SourceLight View(LightFace face, in LightPoint at, double light)
    {
        var part = new SourceLight
        {
            DistanceMm = (face.Axes.Centre - at.Place).Length,
            SubtenseDeg = FaceView.SubtenseDeg(face, at.Place),
            DarkReason = light > 0 ? DarkReason.Unspecified
                : face.IsBefore(at.Place) ? DarkReason.FacesAway
                : DarkReason.BehindSource,
        };
        if (!face.IsPoint)
        {
            part.ConfigurationFactor = face.Factor(at);
            if (FaceView.PointOverstatesStops(face, at) is { } stops)
            {
                part.PointOverstatesStops = stops;
            }
        }

        return part;
    }

    private static void Sum<TTrail>(
        ReceivedLight answer, LightSum sum, Maths.CameraSettings? settings, Maths.StopScale scale, string field, ref TTrail trail)
        where TTrail : struct, ITrail
    {
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

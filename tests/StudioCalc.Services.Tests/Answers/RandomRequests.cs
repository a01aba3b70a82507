using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;
using StudioCalc.Contracts;
using StudioCalc.Maths;
using StudioCalc.Tests;

namespace StudioCalc.Services.Tests;

/// <summary>Random requests of every call that takes values, with marks that are on their scales most of the time.</summary>
internal static class RandomRequests
{
    private static readonly RandomMessage Maker = new(RandomValues.Valid, Own, LeaveOut);

    // Searches and simulations cost thousands of times what a formula does: a twentieth of the answers each.
    private static readonly HashSet<string> Heavy = new(StringComparer.Ordinal)
    {
        "CheckBudget", "EstimateHoldingTime", "EstimateThroughput", "EvaluateBounce", "EvaluateReflections", "EvaluateView", "PlanFill", "PlanShoot", "QuoteShoot", "RankViews", "RenderBudget",
        "RenderCallSheet", "RenderView", "ReplanShoot", "SequenceShoot", "StreamPlan", "SuggestMove",
    };

    public static IReadOnlyList<MethodDescriptor> Methods { get; } =
    [
        .. Contract.Services.SelectMany(service => service.Methods).Where(method => method.InputType.Fields.InDeclarationOrder().Count > 0),
    ];

    /// <summary>Samples requests of a call with their answers; refused ones are left out, and must not be all.</summary>
    public static void Sample(MethodDescriptor method, int requests, Action<IMessage, IMessage> check)
    {
        var answered = 0;
        var most = Heavy.Contains(method.Name) ? requests / 20 : requests;
        Maker.Of(method.InputType).Sample(
            request =>
            {
                if (Volatile.Read(ref answered) >= most)
                {
                    return;
                }

                IMessage answer;
                InOrder(request);
                try
                {
                    answer = Calls.CallAsync(method, request).GetAwaiter().GetResult();
                }
                catch (RpcException error) when (error.StatusCode == StatusCode.InvalidArgument)
                {
                    return;
                }

                Interlocked.Increment(ref answered);
                check(request, answer);
            },
            iter: requests,
            print: request => request.ToString()!);
        Assert.True(answered > requests / 50, $"{answered} of {requests} random requests of {method.Name} were answered.");
    }

    // Times of independent readings are in no order, nor is one component of several the main one.
    private static void InOrder(IMessage request)
    {
        if (request is V1.RenderSharpnessRequest { Focus: { } focus })
        {
            InOrder(focus);
        }

        if (request is V1.PlaceFocusRequest { Components: var components })
        {
            for (var i = 0; i < components.Count; i++)
            {
                components[i].Main = i == components.Count / 2;
            }
        }

        if (request is V1.EvaluateReflectionsRequest { HasSightLines: false } mirrors)
        {
            mirrors.SightLines = 8;
        }

        RandomSources.MakeSense(request);
        RandomBudgets.MakeSense(request);
        RandomFood.MakeSense(request);
        RandomFills.MakeSense(request);
        RandomViews.MakeSense(request);
        RandomQuotes.MakeSense(request);
        RandomRuns.MakeSense(request);
        RandomDays.MakeSense(request);
        RandomPlans.MakeSense(request, InOrder);
        if (request is V1.FollowBackLightRequest { Readings: var readings })
        {
            foreach (var (reading, offset) in readings.Zip(readings.Select(one => one.Offset).OrderBy(one => one.ToTimeSpan()).ToList()))
            {
                reading.Offset = offset;
            }
        }
    }

    // What the rules between fields refuse is made seldom or never, so that most requests have an answer.
    private static Gen<object>? Own(FieldDescriptor field) => RandomSources.Own(field) ?? RandomFood.Own(field) ?? RandomViews.Own(field) ?? RandomQuotes.Own(field) ?? RandomRuns.Own(field) ?? RandomDays.Own(field) ?? RandomPlans.Own(field) ?? (field.ContainingType.Name, field.Name) switch
    {
        ("Aperture", "mark") => Gen.OneOf<object>("f/1.4", "2", "f/2.8", "f/4", "5.6", "f/8", "11", "f/16", "f/22"),
        ("ShutterSpeed", "mark") => Gen.OneOf<object>("1/4000", "1/250", "1/125", "1/60", "1/30", "1/8", "1", "30 s"),
        ("Iso", "mark") => Gen.OneOf<object>("50", "100", "200", "400", "1600"),
        ("FlashPower", "fraction") => Gen.OneOf<object>("1/2", "1/4", "1/8", "1/16"),
        ("FlashPower", "below_full_stops") => Gen.Double[1, 6].Select(stops => (object)stops),
        ("FlashReading", "includes_ambient") => Gen.Const<object>(false),
        ("Camera", "sync_speed") => Gen.Const<object>(() => new V1.ShutterSpeed { TimeS = Math.Pow(2, -23 / 3.0) }),
        ("Camera", "slowest_shutter_speed") => Gen.Const<object>(() => new V1.ShutterSpeed { TimeS = 2 }),
        ("Camera", "widest_aperture") => Gen.Const<object>(() => new V1.Aperture { FNumber = 2.8 }),
        ("Camera", "smallest_aperture") => Gen.Const<object>(() => new V1.Aperture { FNumber = 22 }),
        ("Camera", "fastest_shutter_speed") => Gen.Const<object>(() => new V1.ShutterSpeed { TimeS = Math.Pow(2, -13) }),
        ("Camera", "lowest_iso") => Gen.Const<object>(() => new V1.Iso { Speed = 1 }),
        ("Camera", "highest_iso") => Gen.Const<object>(() => new V1.Iso { Speed = 1e7 }),
        ("CloseUp", "f_numbers_are_effective") => Gen.Const<object>(true),
        ("FlashFill", "lowest_power") => Gen.Const<object>(() => new V1.FlashPower { BelowFullStops = FlashPowers.LowestBelowFullStops }),
        ("BalanceFillRequest", "back_light") => Maker.Of(V1.ContinuousReading.Descriptor)
            .Select(reading => (object)new V1.Reading { Continuous = (V1.ContinuousReading)reading }),
        ("FlashFill", "reading") => Maker.Of(V1.FlashReading.Descriptor)
            .Select(reading => (object)new V1.Reading { Flash = (V1.FlashReading)reading }),
        ("SolveFlashRequest", "units") => Maker.Of(V1.FlashUnit.Descriptor).Select(unit => (object)Placed((V1.FlashUnit)unit)),
        ("SolveFlashRequest", "aperture") => Gen.Const<object>(() => new V1.Aperture { Mark = "f/8" }),
        ("SolveFlashRequest", "iso") => Gen.Const<object>(() => new V1.Iso { Mark = "200" }),
        ("SolveFlashRequest", "lowest_power") => Gen.Const<object>(() => new V1.FlashPower { BelowFullStops = FlashPowers.LowestBelowFullStops }),
        ("Lens", "focal_length_mm") => Gen.Double[20, 200].Select(mm => (object)mm),
        ("Closeness", "magnification") => Gen.Double[0, 2].Select(m => (object)m),
        ("Closeness", "field_width_mm") => Gen.Double[10, 2000].Select(mm => (object)mm),
        ("Closeness", "sensor_distance_mm") => Gen.Double[900, 5000].Select(mm => (object)mm),
        ("FocusedCamera", "sensor") => Maker.Of(V1.Sensor.Descriptor).Select(sensor => (object)sensor),
        ("EvaluateDepthOfFieldRequest", "offsets_mm") => Gen.Double[-5, 500].Select(mm => (object)mm),
        ("Sensor", "format") => Gen.OneOf<object>("36x24", "23.5x15.6", "43.8x32.9"),
        ("SharpDepths", "far_is_infinite") => Gen.Const<object>(true),
        ("TwoPoints", "near") => Gen.Select(Gen.Double[10, 500], Gen.Double[-1000, 1000])
            .Select((distance, height) => (object)new V1.AxialPoint { DistanceMm = distance, HeightMm = height }),
        ("TwoPoints", "far") => Gen.Select(Gen.Double[500, 5000], Gen.Double[-1000, 1000])
            .Select((distance, height) => (object)new V1.AxialPoint { DistanceMm = distance, HeightMm = height }),
        ("CheckFoodSafetyRequest", "regime_ids") => Gen.Int[0, SafetyRegimes.Ids.Count - 1].Select(i => (object)SafetyRegimes.Ids[i]),
        ("EstimateRecyclingRequest", "shortest_recycle_s") => Gen.Const<object>(0.01),
        ("FocusComponent" or "CameraDirection", "position" or "aim_point") => Gen.Select(
            Gen.Double[-60, 60], Gen.Double[-60, 60], Gen.Double[-20, 60], (x, y, z) => (object)new V1.Point { XMm = x, YMm = y, ZMm = z }),
        ("FocusComponent", "height_mm" or "diameter_mm") => Gen.Double[0, 60].Select(size => (object)size),
        ("WindowPlace", "window" or "up") => Gen.Const<object>(true),
        ("EvaluateWindowRequest", "reading") => Maker.Of(V1.ContinuousReading.Descriptor)
            .Select(reading => (object)new V1.Reading { Continuous = (V1.ContinuousReading)reading }),
        ("EvaluateShadowRequest", "cells") => Gen.Const<object>(4u),
        ("EvaluateShadowRequest", "shutter_speed") => Gen.Const<object>(() => new V1.ShutterSpeed { TimeS = 0.01 }),
        ("EvaluateReflectionsRequest", "sight_lines") => Gen.Const<object>(8u),
        ("EvaluateBowlRequest", "rim_diameter_mm") => Gen.Double[100, 400].Select(mm => (object)mm),
        ("EvaluateBowlRequest", "content_diameter_mm") => Gen.Double[20, 120].Select(mm => (object)mm),
        ("EvaluateBowlRequest", "distance_mm") => Gen.Double[190, 3000].Select(mm => (object)mm),
        ("TrackSunRequest", "date") => Gen.OneOf<object>("1950-01-01", "2026-06-21", "2027-02-28", "2100-12-31"),
        ("TrackSunRequest", "time_zone") => Gen.OneOf<object>("Europe/Vienna", "UTC", "Asia/Kathmandu", "America/St_Johns"),
        _ => null,
    };

    // A whole unit, without a power where it has no energy, so that its power may be solved for.
    private static V1.FlashUnit Placed(V1.FlashUnit unit)
    {
        if (!unit.HasSourceWidthMm)
        {
            return unit;
        }

        unit.GuideNumberM = Math.Max(1, unit.GuideNumberM);
        unit.DistanceMm = Math.Max(100, unit.DistanceMm);
        unit.Power = unit.HasFullEnergyJ && unit.FullEnergyJ < 10000 ? unit.Power : null;
        return unit;
    }

    private static bool LeaveOut(FieldDescriptor field) => (field.ContainingType.Name, field.Name)
        is ("Aperture" or "ShutterSpeed" or "Iso", "scale") or ("Aperture", "tenths") or ("FlashPower", "offset_stops")
        or ("ContinuousReading" or "FlashReading", "receptor")
        or ("EvaluateExposureRequest", "lens_factor")
        or ("FocusedCamera", "sensor_distance_mm")
        or ("SolveFlashRequest", "powers" or "power_scale")
        or ("Window", "transmittance")
        or ("GlossySurface", "metal")
        or ("MirroredThing", "two_sided")
        or ("EvaluateHeadroomRequest", "reflected_constant" or "incident_constant" or "lens_factor" or "measured_headroom_stops");
}

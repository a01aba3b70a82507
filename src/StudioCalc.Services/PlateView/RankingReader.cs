using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a ranking looks at, as a request tells it.</summary>
/// <param name="Scene">What stands on the table.</param>
/// <param name="Search">Which views are looked at.</param>
/// <param name="HasSharpness">Whether the cost of depth is reckoned.</param>
internal sealed record RankingRead(SceneRead Scene, ViewSearch Search, bool HasSharpness);

/// <summary>Reads rankings of views.</summary>
internal static class RankingReader
{
    /// <summary>Share of each component that must show where a request does not tell.</summary>
    public const double DefaultLeastShare = 0.3;

    private const int MostViews = 20000;
    private const int MostLooks = 2_000_000;
    private const double DefaultStepDeg = 5;
    private const uint DefaultCount = 3;
    private const double DefaultDifferenceDeg = 15;

    private static readonly AngleRange AllElevations = new() { FromDeg = 0, ToDeg = 90 };

    /// <summary>Reads a ranking; null after noting what is bad.</summary>
    public static RankingRead? ReadRanking(this RequestContext context, RankViewsRequest request, FieldPath path)
    {
        var none = default(NoTrail);
        var scenePath = path[RankViewsRequest.SceneFieldNumber];
        var scene = context.ReadScene(request.Scene, scenePath);
        if (scene?.Importances.Any(importance => importance > 0) == false)
        {
            context.Violations.Add(scenePath[Scene.ComponentsFieldNumber].ToString(), RefusalReason.OutOfRange,
                "None of them matters, so no view is better than another; give at least one an importance above 0.");
        }

        var cameraPath = path[RankViewsRequest.CameraFieldNumber];
        var camera = context.ReadViewCamera(request.Camera, cameraPath, ref none);
        context.CheckElevations(request.Elevations, path[RankViewsRequest.ElevationsFieldNumber]);
        var elevations = context.ReadAngles(request.Elevations ?? AllElevations, path[RankViewsRequest.ElevationsFieldNumber]);
        var azimuths = request.Azimuths is null
            ? [request.Camera.Direction.AzimuthDeg]
            : context.ReadAngles(request.Azimuths, path[RankViewsRequest.AzimuthsFieldNumber]);
        var turns = context.ReadTurns(request, scene, path[RankViewsRequest.PlateTurnsFieldNumber]);
        context.CheckCount(request, elevations, azimuths, turns, path);
        context.CheckHeights(request, path);
        if (request.Elevations is not null && request.Camera.ElevationOrigin == ElevationOrigin.Vertical)
        {
            context.Violations.Add(cameraPath[ViewCamera.ElevationOriginFieldNumber].ToString(), RefusalReason.Conflict,
                "The elevations to look at count from the table; count the camera's from there too.");
        }

        var sharp = context.ReadSharpness(request, camera, path);
        var weights = context.ReadWeights(request, path[RankViewsRequest.WeightsFieldNumber]);
        if (context.Violations.Any || scene is null || camera is null)
        {
            return null;
        }

        return new(scene, new()
        {
            Scene = scene.Scene,
            Camera = camera.Geometry,
            Importances = scene.Importances,
            Main = scene.Main,
            Stays = scene.Stays,
            ElevationsDeg = elevations,
            AzimuthsDeg = azimuths,
            TurnsDeg = turns,
            Weights = weights,
            LeastShare = request.HasLeastVisibleShare ? request.LeastVisibleShare : DefaultLeastShare,
            SharpMm = sharp ?? double.PositiveInfinity,
            LowestMm = request.HasLowestCameraMm ? request.LowestCameraMm : double.NegativeInfinity,
            HighestMm = request.HasHighestCameraMm ? request.HighestCameraMm : double.PositiveInfinity,
            Count = (int)(request.HasCount ? request.Count : DefaultCount),
            LeastDifferenceDeg = request.HasLeastDifferenceDeg ? request.LeastDifferenceDeg : DefaultDifferenceDeg,
        }, sharp is not null);
    }

    private static void CheckElevations(this RequestContext context, AngleRange? range, FieldPath path)
    {
        if (range is null)
        {
            return;
        }

        if (range.FromDeg < 0)
        {
            context.Violations.Add(path[AngleRange.FromDegFieldNumber].ToString(), RefusalReason.OutOfRange, "Elevations run from 0, level with the table, to 90, straight down.");
        }

        if (range.ToDeg > 90)
        {
            context.Violations.Add(path[AngleRange.ToDegFieldNumber].ToString(), RefusalReason.OutOfRange, "Elevations run from 0, level with the table, to 90, straight down.");
        }
    }

    private static List<double> ReadAngles(this RequestContext context, AngleRange range, FieldPath path)
    {
        if (range.ToDeg < range.FromDeg)
        {
            context.Violations.Add(path[AngleRange.ToDegFieldNumber].ToString(), RefusalReason.Conflict, "Must not lie below the first.");
            return [];
        }

        var step = range.HasStepDeg ? range.StepDeg : DefaultStepDeg;
        var count = (int)Math.Floor((range.ToDeg - range.FromDeg) / step + 1e-9) + 1;
        return [.. Enumerable.Range(0, count).Select(i => range.FromDeg + i * step)];
    }

    private static List<double> ReadTurns(this RequestContext context, RankViewsRequest request, SceneRead? scene, FieldPath path)
    {
        if (request.PlateTurns is null)
        {
            return [0];
        }

        if (scene is not null && scene.Stays.All(stays => stays))
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict, "Everything stays, so that nothing turns with the plate; leave it out.");
        }

        return context.ReadAngles(request.PlateTurns, path);
    }

    private static void CheckCount(
        this RequestContext context, RankViewsRequest request, List<double> elevations, List<double> azimuths, List<double> turns, FieldPath path)
    {
        var views = (long)elevations.Count * azimuths.Count * turns.Count;
        var things = (long)request.Scene.Components.Count + request.Scene.Vessels.Count;
        var most = Math.Min(MostViews, MostLooks / (things * things));
        if (views <= most)
        {
            return;
        }

        var longest = turns.Count > Math.Max(elevations.Count, azimuths.Count) ? RankViewsRequest.PlateTurnsFieldNumber
            : azimuths.Count > elevations.Count || request.Elevations is null ? RankViewsRequest.AzimuthsFieldNumber
            : RankViewsRequest.ElevationsFieldNumber;
        context.Violations.Add(path[longest][AngleRange.StepDegFieldNumber].ToString(), RefusalReason.OutOfRange,
            FormattableString.Invariant($"These ranges make {views} views together; at most {most} are looked at with so many things. Take a wider step."));
    }

    private static void CheckHeights(this RequestContext context, RankViewsRequest request, FieldPath path)
    {
        var highest = path[RankViewsRequest.HighestCameraMmFieldNumber].ToString();
        if (request.Camera.PlaceCase == ViewCamera.PlaceOneofCase.FarFieldWidthMm)
        {
            if (request.HasLowestCameraMm)
            {
                context.Violations.Add(path[RankViewsRequest.LowestCameraMmFieldNumber].ToString(), RefusalReason.Conflict, "A far camera has no height; leave it out.");
            }

            if (request.HasHighestCameraMm)
            {
                context.Violations.Add(highest, RefusalReason.Conflict, "A far camera has no height; leave it out.");
            }
        }
        else if (request.HasLowestCameraMm && request.HasHighestCameraMm && request.HighestCameraMm < request.LowestCameraMm)
        {
            context.Violations.Add(highest, RefusalReason.Conflict, "Must not lie below the lowest height.");
        }
    }

    private static double? ReadSharpness(this RequestContext context, RankViewsRequest request, ViewCameraRead? camera, FieldPath path)
    {
        if (request.Sharpness is not { } sharpness)
        {
            return null;
        }

        var sharpnessPath = path[RankViewsRequest.SharpnessFieldNumber];
        if (request.Camera.PlaceCase == ViewCamera.PlaceOneofCase.FarFieldWidthMm)
        {
            context.Violations.Add(sharpnessPath.ToString(), RefusalReason.Conflict, "A far camera has no depth of field; leave it out.");
            return null;
        }

        var none = default(NoTrail);
        var blurPath = sharpnessPath[ViewSharpness.PermittedBlurFieldNumber];
        var fNumber = context.ReadSetFNumber(sharpness.Aperture, camera?.Lens, sharpnessPath[ViewSharpness.ApertureFieldNumber], ref none);
        if (camera is null || context.ReadBlurMm(sharpness.PermittedBlur, camera.Sensor, blurPath, ref none) is not { } blur || fNumber is null)
        {
            return null;
        }

        context.NoteFineBlur(blur, camera.Sensor, blurPath);
        return Maths.SharpZone.Evaluate(camera.Lens!, fNumber.Value, blur).TotalDepthMm;
    }

    private static Maths.ViewWeights ReadWeights(this RequestContext context, RankViewsRequest request, FieldPath path)
    {
        var given = request.Weights ?? new();
        if (given.HasDepthFits && request.Sharpness is null)
        {
            context.Violations.Add(path[V1.ViewWeights.DepthFitsFieldNumber].ToString(), RefusalReason.Conflict,
                "Needs sharpness: the aperture and the blur that passes.");
        }

        var weights = new Maths.ViewWeights(
            given.HasMainInFront ? given.MainInFront : 2,
            given.HasMainLarge ? given.MainLarge : 2,
            given.HasComponentsShow ? given.ComponentsShow : 3,
            request.Scene.Vessels.Count == 0 ? 0 : given.HasInsidesOpen ? given.InsidesOpen : 1,
            request.Sharpness is null ? 0 : given.HasDepthFits ? given.DepthFits : 1);
        if (weights.Total <= 0)
        {
            context.Violations.Add(path.ToString(), RefusalReason.Conflict,
                "At least one part that the scene has must weigh more than 0; insides count only with vessels.");
        }

        return weights;
    }
}

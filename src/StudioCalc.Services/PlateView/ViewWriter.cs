using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Looks at a scene and writes what shows.</summary>
internal static class ViewWriter
{
    public static EvaluateViewResponse Response<TTrail>(
        SceneRead read, ViewCameraRead camera, int lines, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (scene, geometry) = (read.Scene, camera.Geometry);
        var view = new SceneView(scene, geometry, lines);
        var response = new EvaluateViewResponse
        {
            Camera = Camera(camera),
            ModelRevision = ModelRevision.Current,
        };
        for (var i = 0; i < scene.Solids.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            trail.Section(read.Names[i]);
            response.Components.Add(Component(read, view, geometry, i, ref trail));
        }

        Order(response);
        for (var i = 0; i < scene.Vessels.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            trail.Section(read.Names[scene.Solids.Count + i]);
            response.Vessels.Add(Inside(read, view, geometry, i, ref trail));
        }

        response.Main = Main(response, read.Main);
        return response;
    }

    private static ViewCameraAnswer Camera(ViewCameraRead camera)
    {
        var geometry = camera.Geometry;
        var answer = new ViewCameraAnswer
        {
            ElevationDeg = geometry.ElevationDeg,
            AzimuthDeg = geometry.AzimuthDeg,
            FieldWidthMm = geometry.FieldWidthMm,
            FieldHeightMm = geometry.FieldHeightMm,
        };
        if (geometry.DistanceMm is { } distance)
        {
            answer.DistanceMm = distance;
            answer.EntrancePupil = geometry.Eye.ToAnswer();
            answer.Magnification = camera.Lens!.Magnification;
        }

        return answer;
    }

    private static ComponentView Component<TTrail>(SceneRead read, SceneView view, ViewGeometry camera, int i, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        Span<int> hidden = stackalloc int[read.Scene.Count];
        hidden.Clear();
        var outline = view.Outline(i, hidden);
        var (topSeen, topPoints) = view.Top(i);
        var (near, far) = view.Depths(i);
        var answer = new ComponentView
        {
            Name = read.Names[i],
            VisibleShare = SolidView.ShareOf(outline.Seen, outline.Alone, "sight lines", $"components[{i}].visible_share", ref trail),
            UncertaintyShare = outline.Uncertainty,
            TopVisibleShare = topPoints > 0 ? (double)topSeen / topPoints : 0,
            TopUncertaintyShare = SolidView.UncertaintyOf(topPoints > 0 ? (double)topSeen / topPoints : 0, topPoints),
            FrameShare = Math.Min(1, outline.InFrameMm2 / (camera.FieldWidthMm * camera.FieldHeightMm)),
            OutsideFrameShare = outline.OutsideShare,
            NearestDepthMm = near,
            FarthestDepthMm = far,
        };
        if (outline.Seen > 0)
        {
            answer.FromLeftShare = 0.5 + outline.SumRightMm / outline.Seen / camera.FieldWidthMm;
            answer.FromTopShare = 0.5 - outline.SumUpMm / outline.Seen / camera.FieldHeightMm;
        }

        answer.HiddenBy.Add(Hidings(read.Names, hidden, outline.Alone));
        return answer;
    }

    private static VesselView Inside<TTrail>(SceneRead read, SceneView view, ViewGeometry camera, int i, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        Span<int> hidden = stackalloc int[read.Scene.Count];
        hidden.Clear();
        var vessel = read.Scene.Vessels[i];
        var (seen, points) = view.Content(i, hidden);
        var (centre, half, whole) = ContentView.Elevations(vessel, camera);
        var answer = new VesselView
        {
            Name = read.Names[read.Scene.Solids.Count + i],
            ContentVisibleShare = SolidView.ShareOf(seen, points, "points of the content", $"vessels[{i}].content_visible_share", ref trail),
            ContentUncertaintyShare = SolidView.UncertaintyOf(points > 0 ? (double)seen / points : 0, points),
            ContentAloneShare = ContentView.Share(vessel, camera),
        };
        if (centre is not null)
        {
            answer.CentreElevationDeg = centre.Value;
        }

        if (half is not null)
        {
            answer.HalfElevationDeg = half.Value;
        }

        if (whole is not null)
        {
            answer.WholeElevationDeg = whole.Value;
        }

        answer.HiddenBy.Add(Hidings(read.Names, hidden, points));
        return answer;
    }

    private static IEnumerable<Hiding> Hidings(IReadOnlyList<string> names, ReadOnlySpan<int> hidden, int of)
    {
        var hidings = new List<Hiding>();
        for (var i = 0; i < hidden.Length; i++)
        {
            if (hidden[i] > 0)
            {
                hidings.Add(new() { Name = names[i], Share = (double)hidden[i] / of });
            }
        }

        return hidings.OrderByDescending(hiding => hiding.Share);
    }

    private static void Order(EvaluateViewResponse response)
    {
        var place = 0u;
        foreach (var component in response.Components.OrderBy(component => component.NearestDepthMm))
        {
            component.DepthOrder = ++place;
        }
    }

    private static MainComponentView Main(EvaluateViewResponse response, int main)
    {
        var component = response.Components[main];
        return new()
        {
            Name = component.Name,
            IsNearest = response.Components.All(other => other.NearestDepthMm >= component.NearestDepthMm),
            IsLargest = component.FrameShare > 0 && response.Components.All(other => other.FrameShare <= component.FrameShare),
            IsUnhidden = component.VisibleShare >= 1 && component.HiddenBy.Count == 0,
        };
    }
}

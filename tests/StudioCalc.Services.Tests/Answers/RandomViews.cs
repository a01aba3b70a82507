using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Random dishes before a camera, so that most requests with them have an answer.</summary>
internal static class RandomViews
{
    /// <summary>Values of fields whose whole range seldom makes sense together.</summary>
    public static Gen<object>? Own(FieldDescriptor field) => (field.ContainingType.Name, field.Name) switch
    {
        ("Vessel" or "ViewComponent", "base") => Gen.Select(Gen.Double[-150, 150], Gen.Double[-150, 150], Gen.Double[0, 60])
            .Select((x, y, z) => (object)new Point { XMm = x, YMm = y, ZMm = z }),
        ("Vessel" or "ViewComponent", _) when field.Name.EndsWith("_mm", StringComparison.Ordinal) => Gen.Double[5, 150].Select(mm => (object)mm),
        ("CameraDirection", "aim_point") => Gen.Double[0, 60].Select(z => (object)new Point { XMm = 0, YMm = 0, ZMm = z }),
        ("ViewCamera", "distance_mm") => Gen.Double[600, 3000].Select(mm => (object)mm),
        ("ViewCamera", "field_width_mm" or "far_field_width_mm") => Gen.Double[150, 600].Select(mm => (object)mm),
        ("AngleRange", "from_deg") => Gen.Double[0, 20].Select(deg => (object)deg),
        ("AngleRange", "to_deg") => Gen.Double[30, 90].Select(deg => (object)deg),
        ("AngleRange", "step_deg") => Gen.Double[40, 90].Select(deg => (object)deg),
        ("RankViewsRequest", "lowest_camera_mm") => Gen.Double[0, 200].Select(mm => (object)mm),
        ("RankViewsRequest", "highest_camera_mm") => Gen.Double[300, 3000].Select(mm => (object)mm),
        ("SuggestMoveRequest", "fixed_components") => Gen.Const<object>(0u),
        (_, "sight_lines") => Gen.UInt[16, 32].Select(lines => (object)lines),
        _ => null,
    };

    /// <summary>Mends every scene and camera of a request.</summary>
    public static void MakeSense(IMessage message)
    {
        switch (message)
        {
            case Scene scene:
                Mend(scene);
                break;
            case ViewCamera camera:
                Mend(camera);
                break;
            case RankViewsRequest request:
                Mend(request);
                break;
        }

        foreach (var field in message.Descriptor.Fields.InDeclarationOrder())
        {
            if (field is { FieldType: FieldType.Message, IsRepeated: false } && field.Accessor.HasValue(message))
            {
                MakeSense((IMessage)field.Accessor.GetValue(message));
            }
        }
    }

    // A far camera has neither height nor depth of field.
    private static void Mend(RankViewsRequest request)
    {
        if (request.Camera.PlaceCase == ViewCamera.PlaceOneofCase.FarFieldWidthMm)
        {
            request.ClearLowestCameraMm();
            request.ClearHighestCameraMm();
            request.Sharpness = null;
        }

        if (request.Sharpness is null)
        {
            request.Weights?.ClearDepthFits();
        }
    }

    private static void Mend(Scene scene)
    {
        for (var i = 0; i < scene.Components.Count; i++)
        {
            var component = scene.Components[i];
            component.Name = $"component {i}";
            component.IsMain = i == scene.Components.Count / 2;
            if (component.Kind != SolidKind.ConeFrustum)
            {
                component.ClearTopShare();
            }
        }

        for (var i = 0; i < scene.Vessels.Count; i++)
        {
            var vessel = scene.Vessels[i];
            vessel.Name = $"vessel {i}";
            vessel.FloorHeightMm = 0.2 * vessel.RimHeightMm;
            vessel.ContentHeightMm = 0.7 * vessel.RimHeightMm;
        }
    }

    private static void Mend(ViewCamera camera)
    {
        if (camera.PlaceCase == ViewCamera.PlaceOneofCase.FarFieldWidthMm)
        {
            camera.Lens = null;
        }
        else
        {
            camera.Lens = new() { FocalLengthMm = 90 };
        }
    }
}

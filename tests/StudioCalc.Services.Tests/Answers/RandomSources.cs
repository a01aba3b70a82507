using CsCheck;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>Random lights that stand about a plate, so that most requests with them have an answer.</summary>
internal static class RandomSources
{
    /// <summary>Values of fields whose whole range seldom makes sense together.</summary>
    public static Gen<object>? Own(FieldDescriptor field) => (field.ContainingType.Name, field.Name) switch
    {
        ("Pose", "position") => Place(-1500, 1500, 50, 1500),
        ("Pose", "aim_point") or ("CalibrationReading", "place") => Place(-100, 100, -20, 20),
        ("LightReceiver", "place") => Place(-300, 300, 0, 100),
        ("LightReceiver", "aim_point") => Place(-2000, 2000, 200, 2000),
        ("CalibrationReading", "aim_point") => Place(-2000, 2000, 200, 2000),
        (_, "up" or "window") when field.FieldType == FieldType.Bool => Gen.Const<object>(true),
        (_, "source_index" or "reference_index") => Gen.Const<object>(0u),
        ("OutlineSource", "corners") => Gen.Double[-500, 500].Select(mm => (object)new FacePoint { RightMm = mm, UpMm = mm }),
        ("MapFallOffRequest", "columns" or "rows") => Gen.UInt[2, 6].Select(points => (object)points),
        _ => null,
    };

    /// <summary>Mends every source of a request: lights with an outline get one that does not cross itself, and so on.</summary>
    public static void MakeSense(IMessage message)
    {
        switch (message)
        {
            case LightSource source:
                Mend(source);
                break;
            case MirroredThing { Face.ShapeCase: LightSource.ShapeOneofCase.Point } thing:
                thing.Face.Disc = new() { DiameterMm = 700 };
                break;
            case FlashReading { HasReceptor: true } flash:
                flash.ClearReceptor();
                break;
        }

        foreach (var field in message.Descriptor.Fields.InDeclarationOrder().Where(field => field.FieldType == FieldType.Message && !field.IsMap))
        {
            var inner = field.IsRepeated
                ? ((System.Collections.IEnumerable)field.Accessor.GetValue(message)).Cast<IMessage>()
                : field.Accessor.HasValue(message) ? [(IMessage)field.Accessor.GetValue(message)] : [];
            foreach (var one in inner.ToList())
            {
                MakeSense(one);
            }
        }
    }

    private static void Mend(LightSource source)
    {
        if (source.ShapeCase == LightSource.ShapeOneofCase.Outline)
        {
            source.Outline = new()
            {
                Corners =
                {
                    new FacePoint { RightMm = -200, UpMm = -200 }, new FacePoint { RightMm = 300, UpMm = -200 },
                    new FacePoint { RightMm = 0, UpMm = 0 }, new FacePoint { RightMm = -200, UpMm = 400 },
                },
            };
        }

        if (source.ShapeCase == LightSource.ShapeOneofCase.Point)
        {
            source.HotCentre = null;
        }

        if (source.Calibration?.ValueCase == SourceCalibration.ValueOneofCase.LuminanceCdPerM2 && source.ShapeCase == LightSource.ShapeOneofCase.Point)
        {
            source.Calibration = null;
        }

        if (source.Calibration?.Reading is { } reading)
        {
            if (reading.Reading.Continuous is { ValueCase: ContinuousReading.ValueOneofCase.LuminanceCdPerM2 } steady)
            {
                steady.IlluminanceLx = steady.LuminanceCdPerM2;
            }

            reading.Power = reading.Reading.Flash is null ? null : reading.Power;
        }

        source.Power = source.Calibration?.Reading?.Power is null ? null : source.Power;
    }

    private static Gen<object> Place(double low, double high, double lowest, double highest) => Gen.Select(
        Gen.Double[low, high], Gen.Double[low, high], Gen.Double[lowest, highest],
        (x, y, z) => (object)new Point { XMm = x, YMm = y, ZMm = z });
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads things that stand in the light.</summary>
internal static class OccluderReader
{
    /// <summary>Reads every thing of a list; one that cannot be is noted, and null.</summary>
    public static IReadOnlyList<LightBlocker?> ReadAll(this RequestContext context, IReadOnlyList<Occluder> occluders, FieldPath path) =>
        [.. occluders.Select((occluder, i) => context.Read(occluder, path.At(i)))];

    private static LightBlocker? Read(this RequestContext context, Occluder occluder, FieldPath path)
    {
        switch (occluder.ShapeCase)
        {
            case Occluder.ShapeOneofCase.Ball:
                return new BallBlocker(occluder.Ball.Centre.ToVector(), occluder.Ball.DiameterMm);
            case Occluder.ShapeOneofCase.Box:
                var box = occluder.Box;
                return new BoxBlocker(box.Base.ToVector(), box.WidthMm, box.DepthMm, box.HeightMm, box.TurnDeg);
            default:
                var (from, to) = (occluder.Tube.From.ToVector(), occluder.Tube.To.ToVector());
                if (from != to)
                {
                    return new TubeBlocker(from, to, occluder.Tube.DiameterMm);
                }

                context.Violations.Add(path[Occluder.TubeFieldNumber][Tube.ToFieldNumber].ToString(), RefusalReason.Conflict,
                    "Must differ from the other end.");
                return null;
        }
    }
}

using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Reads things that stand in the light.</summary>
internal static class OccluderReader
{
    /// <summary>Reads every thing of a list; one that cannot be is noted, and null.</summary>
    public static IReadOnlyList<Maths.Occluder?> ReadAll(this RequestContext context, IReadOnlyList<Occluder> occluders, FieldPath path) =>
        [.. occluders.Select((occluder, i) => context.Read(occluder, path.At(i)))];

    private static Maths.Occluder? Read(this RequestContext context, Occluder occluder, FieldPath path)
    {
        switch (occluder.ShapeCase)
        {
            case Occluder.ShapeOneofCase.Ball:
                return new Maths.BallOccluder(occluder.Ball.Centre.ToVector(), occluder.Ball.DiameterMm);
            case Occluder.ShapeOneofCase.Box:
                var box = occluder.Box;
                return new Maths.BoxOccluder(box.Base.ToVector(), box.WidthMm, box.DepthMm, box.HeightMm, box.TurnDeg);
            default:
                var (from, to) = (occluder.Tube.From.ToVector(), occluder.Tube.To.ToVector());
                if (from != to)
                {
                    return new Maths.TubeOccluder(from, to, occluder.Tube.DiameterMm);
                }

                context.Violations.Add(path[Occluder.TubeFieldNumber][Tube.ToFieldNumber].ToString(), RefusalReason.Conflict,
                    "Must differ from the other end.");
                return null;
        }
    }
}

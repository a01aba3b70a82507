using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>A glossy surface of a request.</summary>
internal sealed record GlossyRead(string Name, MirrorShape Shape, Gloss Gloss);

/// <summary>A thing of a request that may mirror.</summary>
internal sealed record MirroredRead(string Name, MirrorThing Thing, bool IsWanted, bool IsLight);

/// <summary>Reads requests for reflections.</summary>
internal static class ReflectionsReader
{
    /// <summary>Refractive index where none is told: water.</summary>
    private const double Water = 1.33;

    private static readonly FieldPath Root = FieldPath.Root(EvaluateReflectionsRequest.Descriptor);

    /// <exception cref="Grpc.Core.RpcException">Any field is bad.</exception>
    public static (IReadOnlyList<GlossyRead> Surfaces, IReadOnlyList<MirroredRead> Things) Read(RequestContext context, EvaluateReflectionsRequest request)
    {
        var surfaces = request.Surfaces.Select((surface, i) => context.Read(surface, Root[EvaluateReflectionsRequest.SurfacesFieldNumber].At(i))).ToList();
        var things = request.Things.Select((thing, i) => context.Read(thing, i, Root[EvaluateReflectionsRequest.ThingsFieldNumber].At(i))).ToList();
        context.ThrowIfRefused();
        return (surfaces!, things!);
    }

    private static GlossyRead? Read(this RequestContext context, GlossySurface surface, FieldPath path)
    {
        if (surface.Metal && surface.HasRefractiveIndex)
        {
            context.Violations.Add(path[GlossySurface.RefractiveIndexFieldNumber].ToString(), RefusalReason.Conflict,
                "Metal mirrors by its own law: leave the refractive index out, or do not set metal.");
        }

        var gloss = new Gloss(surface.Metal ? null : surface.HasRefractiveIndex ? surface.RefractiveIndex : Water);
        switch (surface.ShapeCase)
        {
            case GlossySurface.ShapeOneofCase.Flat:
                var flat = surface.Flat;
                return context.Read(flat.Pose, path[GlossySurface.FlatFieldNumber][FlatGloss.PoseFieldNumber]) is { } axes
                    ? new(surface.Name, new MirrorFlat(axes, flat.WidthMm, flat.HasDepthMm ? flat.DepthMm : flat.WidthMm, flat.Oval, flat.WaveDeg), gloss)
                    : null;
            case GlossySurface.ShapeOneofCase.Cylinder:
                return new(surface.Name, new MirrorCylinder(surface.Cylinder.Base.ToVector(), surface.Cylinder.DiameterMm, surface.Cylinder.HeightMm), gloss);
            default:
                return new(surface.Name, new MirrorDome(surface.Dome.Base.ToVector(), surface.Dome.DiameterMm), gloss);
        }
    }

    private static MirroredRead? Read(this RequestContext context, MirroredThing thing, int index, FieldPath path)
    {
        var isWanted = thing.Wish == HighlightWish.Wanted;
        var own = thing.HasName ? thing.Name : thing.Face?.HasName == true ? thing.Face.Name : "";
        var name = own.Length > 0 ? own : FormattableString.Invariant($"thing {index + 1}");
        if (thing.Ball is { } ball)
        {
            if (thing.TwoSided)
            {
                context.Violations.Add(path[MirroredThing.TwoSidedFieldNumber].ToString(), RefusalReason.Conflict, "A ball has no sides.");
                return null;
            }

            return new(name, new MirrorBall(ball.Centre.ToVector(), ball.DiameterMm), isWanted, IsLight: false);
        }

        var facePath = path[MirroredThing.FaceFieldNumber];
        if (thing.Face!.ShapeCase == LightSource.ShapeOneofCase.Point)
        {
            context.Violations.Add(facePath[LightSource.PointFieldNumber].ToString(), RefusalReason.Conflict,
                "A point has no size that could mirror: give the face its shape.");
            return null;
        }

        return context.Read(thing.Face.Pose, facePath[LightSource.PoseFieldNumber]) is { } axes && context.ReadFace(thing.Face, axes, facePath) is { } face
            ? new(name, new MirrorFace(face, thing.TwoSided), isWanted, IsLight: !thing.TwoSided)
            : null;
    }
}

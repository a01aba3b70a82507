using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>What a person should know about the sources of a request, however they are used.</summary>
internal static class SourceNotes
{
    private const double OverheadElevationDeg = 60;

    /// <summary>Notes each kind once, about the first source that it belongs to.</summary>
    /// <param name="context">Takes the notes.</param>
    /// <param name="sources">The sources.</param>
    /// <param name="places">Where their light is wanted.</param>
    /// <param name="field">The field that holds a source, by its index.</param>
    public static void NoteSources(
        this RequestContext context, IReadOnlyList<SourceRead> sources, IReadOnlyCollection<Vector> places, Func<int, string> field)
    {
        if (First(source => source.Face.IsPoint) is { } point)
        {
            context.Advisories.Add(Advise.PointHasNoSize(
                field(point), places.Min(place => (place - sources[point].Face.Axes.Centre).Length)));
        }

        if (First(source => ElevationDeg(source.Face.Axes) > OverheadElevationDeg) is { } high)
        {
            context.Advisories.Add(Advise.LightOverhead(field(high), sources[high].Face.Axes.Centre.Z));
        }

        if (First(source => LowestMm(source.Face) < 0) is { } low)
        {
            context.Advisories.Add(Advise.FaceBelowTable(field(low), LowestMm(sources[low].Face)));
        }

        int? First(Func<SourceRead, bool> fits)
        {
            for (var i = 0; i < sources.Count; i++)
            {
                if (fits(sources[i]))
                {
                    return i;
                }
            }

            return null;
        }
    }

    // Of the light over its aim point.
    private static double ElevationDeg(FaceAxes axes) => Math.Asin(Math.Clamp(-axes.Facing.Z, -1, 1)) * 180 / Math.PI;

    private static double LowestMm(LightFace face)
    {
        var lowest = face.Axes.Centre.Z;
        foreach (var corner in face.Corners)
        {
            lowest = Math.Min(lowest, corner.Z);
        }

        return lowest;
    }
}

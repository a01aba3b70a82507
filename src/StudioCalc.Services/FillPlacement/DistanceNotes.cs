using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>What a person should know about distances that were solved for.</summary>
internal static class DistanceNotes
{
    private const double FlatWorthSayingStops = 1 / 3.0;

    /// <summary>Notes on the distances of one source.</summary>
    public static void NoteDistances(this RequestContext context, IReadOnlyList<SolvedPlace> places, double bandStops)
    {
        context.NoteInverseSquare(places[0], bandStops, "solution.distances[0]");
        if (places.Count > 1)
        {
            context.Advisories.Add(Advise.SeveralDistances("solution.distances", places.Count));
        }
    }

    /// <summary>Notes where inverse square would miss by more than the band.</summary>
    public static void NoteInverseSquare(this RequestContext context, SolvedPlace place, double bandStops, string field)
    {
        if (Misses(place, bandStops) && place is { InverseSquareMm: { } distance, InverseSquareOverStops: { } over })
        {
            context.Advisories.Add(Advise.InverseSquareMisses(field, distance, over));
        }
    }

    /// <summary>Whether inverse square would miss by more than the band.</summary>
    public static bool Misses(SolvedPlace place, double bandStops) => Math.Abs(place.InverseSquareOverStops ?? 0) > bandStops;

    /// <summary>Notes how much less flat food gets than a receiver that faces the source.</summary>
    public static void NoteFlatFood(this RequestContext context, LightLine line, double distanceMm, string field)
    {
        var at = line.ReceiverAt(distanceMm);
        var flat = line.FaceAt(distanceMm).Light(new LightPoint(at.Place, Vector.Up));
        var under = Math.Log2(line.Light(distanceMm) / flat);
        if (at.Collector == Collector.Flat && flat > 0 && under >= FlatWorthSayingStops)
        {
            context.Advisories.Add(Advise.FlatFoodDarker(field, under));
        }
    }
}

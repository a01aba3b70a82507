using StudioCalc.Maths;

namespace StudioCalc.Services;

/// <summary>What a person should know about a plan of a fill.</summary>
internal static class FillNotes
{
    /// <summary>Notes on the ways of a plan, or on the nearest.</summary>
    public static void NoteFill(this RequestContext context, FillRead read, FillOutcome outcome)
    {
        IReadOnlyList<Maths.FillWay> ways = outcome.Nearest is { } nearest ? [nearest] : [.. outcome.Ways.Take(PlanFillWriter.MostWays)];
        if (ways.Count > 0)
        {
            var first = ways[0];
            if (First(ways, way => DistanceNotes.Misses(way.Place, read.Input.BandStops)) is { } missing)
            {
                context.NoteInverseSquare(ways[missing].Place, read.Input.BandStops, Field(missing) + ".place");
            }

            context.NoteFlatFood(first.Scan.Line, first.Place.DistanceMm, Field(0));
            if (First(ways, way => double.IsPositiveInfinity(way.Softness.PenumbraMm ?? 0)) is { } open)
            {
                context.Advisories.Add(Advise.ShadowEdgeOpen(Field(open), ways[open].LowestMm));
            }

            context.NoteSources(
                [.. ways.Select(way => read.Source with { Face = way.Scan.Line.FaceAt(way.Place.DistanceMm) })],
                [read.Input.Receiver.Place],
                Field);
            context.Advisories.Add(Advise.MovingLights());
        }

        Cut("plan.ways", outcome.Ways.Count);
        Cut("left_out", outcome.LeftOut.Count);

        string Field(int index) => outcome.Nearest is null ? FormattableString.Invariant($"plan.ways[{index}]") : "not_reached.nearest";

        void Cut(string field, int count)
        {
            if (count > PlanFillWriter.MostWays)
            {
                context.Advisories.Add(Advise.FillWaysCut(field, count - PlanFillWriter.MostWays));
            }
        }
    }

    private static int? First(IReadOnlyList<Maths.FillWay> ways, Func<Maths.FillWay, bool> fits)
    {
        for (var i = 0; i < ways.Count; i++)
        {
            if (fits(ways[i]))
            {
                return i;
            }
        }

        return null;
    }
}

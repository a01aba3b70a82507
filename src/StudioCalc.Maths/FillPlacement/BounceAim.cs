using static System.Math;

namespace StudioCalc.Maths;

/// <summary>The direction in which something gives most, found by search.</summary>
/// <remarks>Directions 15 degrees apart and given ones are tried; from the best of them steps to eight sides, halved from 8 degrees down
/// to 0.03, lead on to where no neighbour is better.</remarks>
public static class BounceAim
{
    private const int GridDeg = 15;
    private const double FirstStepDeg = 8;
    private const double LastStepDeg = 0.03;
    private const int MostSteps = 40;

    /// <summary>The best direction; null where none gives anything.</summary>
    /// <param name="light">What a unit direction gives, 0 or more.</param>
    /// <param name="candidates">Directions to try beside the grid, not all unit ones; the first wins a tie.</param>
    public static Vector? Find(Func<Vector, double> light, IEnumerable<Vector> candidates)
    {
        ArgumentNullException.ThrowIfNull(light);
        ArgumentNullException.ThrowIfNull(candidates);
        var (best, most) = (default(Vector), 0.0);
        foreach (var candidate in candidates.Where(one => one.Length > 0).Select(one => one.Unit()).Concat(Grid()))
        {
            Take(candidate);
        }

        if (most == 0)
        {
            return null;
        }

        var steps = 0;
        for (var step = FirstStepDeg; step >= LastStepDeg && steps < MostSteps; step /= 2)
        {
            bool better;
            do
            {
                better = false;
                var axes = new FaceAxes(default, best);
                for (var side = 0; side < 8; side++)
                {
                    var (sin, cos) = SinCos(side * PI / 4);
                    better |= Take((best + (axes.Right * cos + axes.Up * sin) * Tan(step * PI / 180)).Unit());
                }

                steps++;
            }
            while (better && steps < MostSteps);
        }

        return best;

        bool Take(Vector direction)
        {
            var given = light(direction);
            if (!(given > most))
            {
                return false;
            }

            (best, most) = (direction, given);
            return true;
        }
    }

    private static IEnumerable<Vector> Grid()
    {
        for (var elevation = -90; elevation <= 90; elevation += GridDeg)
        {
            for (var azimuth = -180; azimuth < (Abs(elevation) == 90 ? -179 : 180); azimuth += GridDeg)
            {
                yield return Vector.Towards(azimuth, elevation);
            }
        }
    }
}

using static System.Math;

namespace StudioCalc.Maths;

/// <summary>Plans a fill: the pairs of power and place that give the wanted light.</summary>
/// <remarks>
/// <code>
/// w = H / (k 2^-p)                                          (34)
/// </code>
/// <para>w: wanted light of the face at the receiver by unit luminance. H: wanted exposure. k: strength at full power. p: stops below it.
/// For each power and direction every distance from 10 mm to 100 m with that light is found, and then held against what is
/// allowed. Listed distances serve within the band.</para>
/// </remarks>
public sealed class FillPlanner
{
    private const double TieStops = 1e-9;

    private readonly FillInput _input;
    private readonly IReadOnlyList<LineScan> _scans;

    /// <summary>Looks through each direction.</summary>
    /// <param name="input">What to plan with.</param>
    public FillPlanner(FillInput input)
        : this(input, [.. Lines(input).Select(line => new LineScan(line))])
    {
    }

    private FillPlanner(FillInput input, IReadOnlyList<LineScan> scans) => (_input, _scans) = (input, scans);

    /// <summary>What it plans with.</summary>
    public FillInput Input => _input;

    /// <summary>The same with other powers, distances, limits or wanted light; face, receiver and directions stay.</summary>
    /// <param name="change">Makes the new input.</param>
    public FillPlanner With(Func<FillInput, FillInput> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return new(change(_input), _scans);
    }

    /// <summary>Plans.</summary>
    public FillOutcome Plan()
    {
        var ways = new List<FillWay>();
        var leftOut = new List<FillLeftOut>();
        foreach (var power in _input.PowersBelowFullStops.Distinct().Order())
        {
            foreach (var scan in _scans)
            {
                Pair(scan, power, ways, leftOut);
            }
        }

        return ways.Count > 0 ? new(FillObstacle.None, Ordered(ways), leftOut, Nearest: null, ShortfallStops: null) : NotReached(leftOut);
    }

    /// <summary>Whether a way keeps the limits on subtense and fall-off.</summary>
    /// <param name="way">The way.</param>
    public FillObstacle LimitMissed(FillWay way)
    {
        ArgumentNullException.ThrowIfNull(way);
        if (way.Softness.SubtenseDeg < _input.LeastSubtenseDeg - TieStops)
        {
            return FillObstacle.Subtense;
        }

        return _input.LargestFallOffStops is { } most && !(Abs(way.Softness.FlatStops ?? double.PositiveInfinity) <= most + TieStops)
            ? FillObstacle.FallOff
            : FillObstacle.None;
    }

    private static IEnumerable<LightLine> Lines(FillInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.Directions.Count == 0)
        {
            return [new LightLine(input.Face, input.Aim, input.Receiver)];
        }

        var now = (input.Face.Axes.Centre - input.Aim).Length;
        return input.Directions.Select(direction =>
        {
            var centre = input.Aim + Vector.Towards(direction.AzimuthDeg, direction.ElevationDeg) * now;
            return new LightLine(input.Face.MovedTo(new FaceAxes(centre, input.Aim, input.RollDeg)), input.Aim, input.Receiver);
        });
    }

    private double Wanted(double power)
    {
        var none = default(NoTrail);
        return Wanted(power, ref none);
    }

    private double Wanted<TTrail>(double power, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var H = trail.Given("H", _input.WantedLxS, "lx s", "wanted exposure");
        var k = trail.Given("k", _input.FullStrength, "", "strength of the source at full power");
        var p = trail.Given("p", power, "stops", "power, below full");
        return trail.Let("w", H / (k * Pow(2, -p)), "", "fill placement (34)");
    }

    private void Pair(LineScan scan, double power, List<FillWay> ways, List<FillLeftOut> leftOut)
    {
        var wanted = Log2(Wanted(power));
        var serves = false;
        foreach (var distance in _input.DistancesMm ?? [])
        {
            if (Abs(scan.Line.LightStops(distance) - wanted) <= _input.BandStops + TieStops)
            {
                serves = true;
                Sort(Way(scan, power, distance));
            }
        }

        foreach (var root in scan.Roots(wanted, DistanceSolver.LeastMm, DistanceSolver.MostMm))
        {
            var allowed = _input.AllowedMm(root);
            var isAllowed = Abs(root - allowed) <= 1e-9 * allowed;
            if (_input.DistancesMm is null)
            {
                if (isAllowed)
                {
                    Sort(Way(scan, power, allowed));
                }
                else
                {
                    leftOut.Add(new(
                        root < allowed ? FillObstacle.NearestDistance : FillObstacle.FarthestDistance, Way(scan, power, root)));
                }
            }
            else if (!serves)
            {
                leftOut.Add(new(FillObstacle.ListedDistances, Way(scan, power, root)));
            }
        }

        void Sort(FillWay way)
        {
            var missed = LimitMissed(way);
            if (missed == FillObstacle.None)
            {
                ways.Add(way);
            }
            else
            {
                leftOut.Add(new(missed, way));
            }
        }
    }

    /// <summary>The same way, followed step by step.</summary>
    /// <param name="way">The way.</param>
    /// <param name="trail">Follows the sum.</param>
    /// <param name="field">The answer message that holds it, with a point at its end, for the trail.</param>
    public FillWay Follow<TTrail>(FillWay way, ref TTrail trail, string field)
        where TTrail : struct, ITrail
    {
        ArgumentNullException.ThrowIfNull(way);
        trail.Section("wanted");
        return Way(way.Scan, way.BelowFullStops, way.Place.DistanceMm, ref trail, field);
    }

    private FillWay Way(LineScan scan, double power, double distanceMm)
    {
        var none = default(NoTrail);
        return Way(scan, power, distanceMm, ref none, "");
    }

    private FillWay Way<TTrail>(LineScan scan, double power, double distanceMm, ref TTrail trail, string field)
        where TTrail : struct, ITrail
    {
        var wanted = Wanted(power, ref trail);
        var face = scan.Line.FaceAt(distanceMm);
        var lowest = face.Axes.Centre.Z;
        foreach (var corner in face.Corners)
        {
            lowest = Min(lowest, corner.Z);
        }

        return new()
        {
            BelowFullStops = power,
            Scan = scan,
            Place = SolvedPlace.At(scan, distanceMm, wanted, _input.BandStops, ref trail, field + "place."),
            Softness = FillSoftness.Of(face, _input.Receiver.Place, _input.PlateDiameterMm, _input.EdgeHeightMm, ref trail, field),
            MovementMm = (face.Axes.Centre - _input.Face.Axes.Centre).Length,
            LowestMm = lowest,
        };
    }

    // A whole-number key, so that rounding does not break a tie.
    private FillWay[] Ordered(IEnumerable<FillWay> ways) => [.. ways.OrderBy(Key).ThenByDescending(way => way.BelowFullStops)];

    private double Key(FillWay way) => Round(1e6 * _input.Preference switch
    {
        FillPreference.Softer => -way.Softness.SubtenseDeg,
        FillPreference.MoreEven => Abs(way.Softness.FlatStops ?? double.PositiveInfinity),
        FillPreference.LeastMovement => way.MovementMm,
        _ => throw new ArgumentOutOfRangeException(nameof(way)),
    });

    private FillOutcome NotReached(List<FillLeftOut> leftOut)
    {
        var limited = leftOut.Where(pair => pair.Obstacle is FillObstacle.Subtense or FillObstacle.FallOff).ToList();
        if (limited.Count > 0)
        {
            var first = Ordered(limited.Select(pair => pair.Way))[0];
            return new(limited.First(pair => pair.Way == first).Obstacle, [], leftOut, first, 0);
        }

        var nearest = Candidates()
            .OrderBy(candidate => Round(candidate.Miss * 1e9)).ThenByDescending(candidate => candidate.Power).FirstOrDefault();
        if (nearest.Scan is not { } scan)
        {
            var other = leftOut.MinBy(OutsideBy);
            return new(other?.Obstacle ?? FillObstacle.Dark, [], leftOut, Nearest: null, ShortfallStops: null);
        }

        var way = Way(scan, nearest.Power, nearest.DistanceMm);
        var own = leftOut.Where(pair => pair.Way.Scan == scan && pair.Way.BelowFullStops.Equals(nearest.Power)).MinBy(OutsideBy);
        var obstacle = (own ?? leftOut.MinBy(OutsideBy))?.Obstacle
            ?? (way.Place.OverWantedStops < 0 ? FillObstacle.HighestPower : FillObstacle.LowestPower);
        return new(obstacle, [], leftOut, way, Abs(way.Place.OverWantedStops));
    }

    private double OutsideBy(FillLeftOut pair) => Abs(Log(pair.Way.Place.DistanceMm / _input.AllowedMm(pair.Way.Place.DistanceMm)));

    private IEnumerable<(double Miss, double Power, double DistanceMm, LineScan? Scan)> Candidates() =>
        from power in _input.PowersBelowFullStops
        from scan in _scans
        from distance in _input.DistancesMm ?? Closest(scan, power)
        let miss = Abs(scan.Line.LightStops(distance) - Log2(Wanted(power)))
        where double.IsFinite(miss)
        select (miss, power, distance, (LineScan?)scan);

    private IReadOnlyList<double> Closest(LineScan scan, double power) =>
        scan.Closest(Log2(Wanted(power)), _input.NearestMm, _input.FarthestMm) is { } closest ? [closest] : [];
}

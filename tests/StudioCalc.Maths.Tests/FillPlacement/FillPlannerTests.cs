using CsCheck;

namespace StudioCalc.Maths.Tests;

public sealed class FillPlannerTests
{
    private static readonly Gen<FillInput> Inputs = Gen.Select(
        Lines.All, Gen.Double[2, 3.3], Gen.Double[0.01, 1], Gen.Double[-8, 8], Gen.Int[0, 2], Gen.Int[0, 2], Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool))
        .Select(random =>
        {
            var (line, start, decades, strength, directions, preference, (listed, subtense, fallOff)) = random;
            var now = line.Light(line.NowMm);
            var near = Math.Pow(10, start);
            return new FillInput
            {
                Face = line.FaceAt(line.NowMm),
                Aim = line.Aim,
                Receiver = line.Receiver,
                Directions = [.. new (double, double)[] { (30, 0), (60, 90) }.Take(directions)],
                PowersBelowFullStops = [0, 1, 2, 3.5],
                FullStrength = 1e6,
                WantedLxS = 1e6 * (now > 0 ? now : 1e-6) * Math.Pow(2, strength),
                NearestMm = near,
                FarthestMm = near * Math.Pow(10, decades),
                DistancesMm = listed ? [near, near * 1.3, near * 2] : null,
                BandStops = 0.2,
                PlateDiameterMm = 280,
                EdgeHeightMm = 40,
                Preference = (FillPreference)preference,
                LeastSubtenseDeg = subtense ? 20 : null,
                LargestFallOffStops = fallOff ? 0.7 : null,
            };
        });

    [Fact]
    public void Plan_OfRandomFills_GivesTheTargetWithinWhatIsAllowed() => Inputs.Sample(
        input =>
        {
            var outcome = new FillPlanner(input).Plan();
            foreach (var way in outcome.Ways)
            {
                var light = way.Scan.Line.FaceAt(way.Place.DistanceMm).Light(way.Scan.Line.ReceiverAt(way.Place.DistanceMm));
                var over = Math.Log2(input.FullStrength * Math.Pow(2, -way.BelowFullStops) * light / input.WantedLxS);
                Assert.InRange(over, input.DistancesMm is null ? -1e-6 : -input.BandStops - 1e-6, input.DistancesMm is null ? 1e-6 : input.BandStops + 1e-6);
                Assert.Equal(over, way.Place.OverWantedStops, 1e-6);
                Assert.Equal(input.AllowedMm(way.Place.DistanceMm), way.Place.DistanceMm);
                Assert.True(way.Softness.SubtenseDeg >= (input.LeastSubtenseDeg ?? 0) - 1e-6);
                Assert.True(input.LargestFallOffStops is null || Math.Abs(way.Softness.FlatStops!.Value) <= input.LargestFallOffStops + 1e-6);
            }

            var keys = outcome.Ways.Select(way => input.Preference switch
            {
                FillPreference.Softer => -way.Softness.SubtenseDeg,
                FillPreference.MoreEven => Math.Abs(way.Softness.FlatStops ?? double.PositiveInfinity),
                _ => way.MovementMm,
            }).ToList();
            Assert.All(keys.Zip(keys.Skip(1)), pair => Assert.True(pair.First <= pair.Second + 1e-5));
            Assert.Equal(outcome.LeftOut.Select(pair => pair.Way.BelowFullStops).Order(), outcome.LeftOut.Select(pair => pair.Way.BelowFullStops));
            Assert.All(outcome.LeftOut, pair => Assert.NotEqual(FillObstacle.None, pair.Obstacle));
        },
        iter: 80);

    [Fact]
    public void NotReached_OfRandomFills_HasRemediesThatServe() => Inputs.Sample(
        input =>
        {
            var planner = new FillPlanner(input);
            var outcome = planner.Plan();
            if (outcome.Obstacle == FillObstacle.None)
            {
                return;
            }

            foreach (var remedy in FillRemedies.For(planner, outcome))
            {
                var distance = remedy.Way.Place.DistanceMm;
                var miss = input.DistancesMm is null ? 0 : input.BandStops;
                Assert.True(remedy.Kind is FillRemedyKind.DiffuseFlash or FillRemedyKind.RaiseIso or FillRemedyKind.EaseLimit
                    || Math.Abs(remedy.Way.Place.OverWantedStops) <= miss + 1e-6);
                switch (remedy.Kind)
                {
                    case FillRemedyKind.AllowNearer:
                        Assert.True(distance < input.AllowedMm(distance));
                        break;
                    case FillRemedyKind.AllowFurther:
                        Assert.True(distance > input.AllowedMm(distance));
                        break;
                    case FillRemedyKind.DiffuseFlash:
                        Assert.True(remedy.ChangeStops < 0 && -remedy.ChangeStops <= outcome.ShortfallStops + 1e-6);
                        break;
                    case FillRemedyKind.RaiseIso:
                        Assert.True(remedy.ChangeStops < 0 && -remedy.ChangeStops <= outcome.ShortfallStops + 1e-6);
                        break;
                    default:
                        Assert.Equal(0, outcome.ShortfallStops);
                        Assert.NotEqual(FillObstacle.None, planner.LimitMissed(remedy.Way));
                        break;
                }
            }

            Assert.True(outcome.Nearest is not null || outcome.ShortfallStops is null);
        },
        iter: 80);
}

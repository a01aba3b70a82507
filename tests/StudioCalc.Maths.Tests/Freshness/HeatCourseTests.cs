using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Layers against the series, against two nodes in closed form, and against their own balance of heat.</summary>
public sealed class HeatCourseTests
{
    private static readonly FoodProperties Meat = new(0.45, 1050, 3400);

    [Fact]
    public void Layers_OfAnyPiece_FollowTheSeries() => Gen.Select(
        Gen.Enum<SolidShape>(), Gen.Double[10, 60], Gen.Double[5, 60], Gen.Double[30, 1200]).Sample(
        (shape, sizeMm, coefficient, seconds) =>
        {
            var body = new PieceBody(70, shape, sizeMm, Meat, 0, false, 120, null);
            var exact = FoodCourse.Of(body, Room(AirMovement.Total, coefficient)).At(seconds);
            var layers = shape == SolidShape.Slab
                ? HeatCells.Slab(sizeMm / 2000, 1, 60)
                : HeatCells.Round(sizeMm / 2000, shape == SolidShape.Ball, 60);
            var course = new HeatCourse<PlainStore>(new(3400), layers, Meat, 70, 22, celsius => coefficient * (celsius - 22));
            course.Advance(seconds);
            Assert.Equal(exact.Surface, course.State.Surface, 0.05);
            Assert.Equal(exact.Mean, course.State.Mean, 0.05);
        },
        iter: 30);

    [Fact]
    public void FoodAndPlate_FollowTwoExponentials()
    {
        // By the eigenvalues of the two nodes: 250 g of 3500 J/(kg K) and 640 J/K, 3 W/K between them, 0.3 and 0.5 W/K to 22 °C.
        var area = Math.PI / 4 * 0.15 * 0.15;
        var plate = new PlateBody(800, 20, 280, FoodProperties.Porcelain, 3 / area, 0.5 / (Math.PI / 4 * 0.28 * 0.28));
        var body = new LiquidBody(70, 250, 150, new(1, 1000, 3500), 0, 0, plate);
        var course = FoodCourse.Of(body, Room(AirMovement.Total, 0.3 / area));
        var (a, b, c, d) = (-(3 + 0.3) / 875, 3 / 875.0, 3 / 640.0, -(3 + 0.5) / 640);
        var root = Math.Sqrt((a - d) * (a - d) + 4 * b * c);
        var (fast, slow) = ((a + d - root) / 2, (a + d + root) / 2);
        var (food0, plate0) = (48.0, -2.0);
        var first = ((a - slow) * food0 + b * plate0) / (fast - slow);
        var second = food0 - first;
        foreach (var t in new[] { 10.0, 60, 300, 1200, 3600 })
        {
            Assert.Equal(22 + first * Math.Exp(fast * t) + second * Math.Exp(slow * t), course.At(t).Mean, 1e-3);
        }
    }

    [Fact]
    public void Heat_ThatLeavesTheFood_IsInThePlateOrTheRoom()
    {
        // No loss to the room at all: food and plate meet at the mean by capacity.
        var plate = new PlateBody(800, 20, 280, FoodProperties.Porcelain, 400, 0);
        var body = new PieceBody(70, SolidShape.Slab, 20, Meat, 0, false, 120, plate);
        var course = FoodCourse.Of(body, Room(AirMovement.Convection, 1e-9) with { WallsCelsius = 22 });
        var food = 1050 * 3400 * 0.02 * Math.PI / 4 * 0.12 * 0.12;
        var before = food * 70 + 640 * 20;
        var state = course.At(120);
        var radiated = before - food * state.Mean - 640 * state.Plate!.Value;

        // Some 5 W/(m² K) of radiation over 113 cm² for two minutes: 1 to 3 % of the heat.
        Assert.InRange(radiated / (food * 48), 0.003, 0.03);
    }

    [Fact]
    public void IceCream_TakesTheHeatThatItsSurfaceLetsIn()
    {
        var mix = new IceCreamMix(0.61, 0.035, -2.7);
        var loss = new SurfaceLoss(new(22, 0.5), 22, 8, 1);
        var cells = HeatCells.Round(0.025, isBall: true, 60);
        var course = new HeatCourse<IceCreamMix>(mix, cells, new(0.25, 550, IceCreamMix.LeastSpecificHeat), -14, 22, loss.At);
        var mass = 550 * cells.Volumes.Sum();
        var taken = 0.0;
        var last = course.State.Surface;
        for (var s = 1; s <= 400; s++)
        {
            course.Advance(s);
            taken -= cells.SurfaceArea * (loss.At(last) + loss.At(course.State.Surface)) / 2;
            last = course.State.Surface;
        }

        Assert.Equal(1, taken / (mass * (mix.Heat(course.State.Mean) - mix.Heat(-14))), 0.02);
    }

    [Fact]
    public void HeatOfIceCream_ComesBackAsItsTemperature() => Gen.Select(Gen.Double[-40, 20], Gen.Double[0.4, 0.8], Gen.Double[-6, -0.5]).Sample(
        (celsius, water, freezing) =>
        {
            var mix = new IceCreamMix(water, 0.03, freezing);
            Assert.Equal(celsius, mix.Celsius(mix.Heat(celsius)), 1e-9);
        });

    private static Room Room(AirMovement movement, double value) => new(new(22, 0.5), 22, movement, value);
}

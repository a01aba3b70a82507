using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>One thing behind another, against sight lines traced one by one.</summary>
public sealed class ThingBehindTests
{
    private static readonly Gen<ThingBehind> Things = Gen.Select(
        Gen.Double[1, 200], Gen.Double[1, 200], Gen.Double[1, 300], (front, back, gap) => new ThingBehind(front, back, gap));

    [Fact]
    public void Hidden_AnyThings_IsWhatStepsUpTheFrontFind() => Gen.Select(Things, Gen.Double[0, 89]).Sample((thing, elevation) =>
    {
        var none = default(NoTrail);
        const int Steps = 2000;
        var slope = Math.Tan(elevation * Math.PI / 180);

        // A place is hidden while its sight line passes under the edge.
        var hidden = Enumerable.Range(0, Steps).Count(i => (i + 0.5) * thing.BackHeightMm / Steps + thing.GapMm * slope < thing.FrontHeightMm);
        Assert.Equal(hidden * thing.BackHeightMm / Steps, thing.HiddenMm(elevation, ref none), thing.BackHeightMm / Steps);
    });

    [Fact]
    public void Elevations_AreWhereHidingBeginsAndEnds() => Things.Sample(thing =>
    {
        var none = default(NoTrail);
        var (top, whole) = (thing.TopShowsDeg(ref none)!.Value, thing.WholeShowsDeg(ref none)!.Value);
        Assert.True(thing.HiddenMm(top + 1e-6, ref none) < thing.BackHeightMm);
        Assert.True(thing.FrontHeightMm <= thing.BackHeightMm ? top == 0 : thing.HiddenMm(top - 1e-6, ref none) == thing.BackHeightMm);
        Assert.Equal(0, thing.HiddenMm(whole + 1e-6, ref none));
        Assert.True(thing.HiddenMm(whole - 1e-6, ref none) > 0);
    });

    [Fact]
    public void Gap_ThatShowsAll_HidesNothingAndLessHides() => Gen.Select(Things, Gen.Double[1, 89]).Sample((thing, elevation) =>
    {
        var none = default(NoTrail);
        var gap = thing.WholeShowsGapMm(elevation, ref none)!.Value;
        Assert.Equal(0, (thing with { GapMm = gap * (1 + 1e-9) }).HiddenMm(elevation, ref none));
        Assert.True((thing with { GapMm = gap * (1 - 1e-6) }).HiddenMm(elevation, ref none) > 0);
    });

    [Fact]
    public void Touching_NeverShowsAll_UnlessTheFrontIsFlat()
    {
        var none = default(NoTrail);
        Assert.Null(new ThingBehind(10, 5, 0).TopShowsDeg(ref none));
        Assert.Null(new ThingBehind(10, 20, 0).WholeShowsDeg(ref none));
        Assert.Equal(10, new ThingBehind(10, 20, 0).HiddenMm(90, ref none));
        Assert.Equal((0, 0, 0), (new ThingBehind(0, 20, 0).TopShowsDeg(ref none), new ThingBehind(0, 20, 0).WholeShowsDeg(ref none), new ThingBehind(0, 20, 0).WholeShowsGapMm(0, ref none)));
        Assert.Null(new ThingBehind(10, 20, 30).WholeShowsGapMm(0, ref none));
    }
}

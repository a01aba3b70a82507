using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Fresnel's equations against their limits and against a complex-free second form.</summary>
public sealed class GlossTests
{
    private static readonly Gen<double> Indices = Gen.Double[1.1, 3];

    [Fact]
    public void Share_SquareOn_IsTheSquareOfTheStep() => Indices.Sample(n =>
        Assert.Equal(Math.Pow((n - 1) / (n + 1), 2), new Gloss(n).Share(1), 1e-12));

    [Fact]
    public void Share_AlongTheSurface_IsAll() => Indices.Sample(n => Assert.Equal(1, new Gloss(n).Share(0), 1e-12));

    // With both angles: sin²(i - t) / sin²(i + t) and tan²(i - t) / tan²(i + t).
    [Fact]
    public void Share_AnyAngle_IsThatOfSinesAndTangents() => Gen.Select(Indices, Gen.Double[0.01, 1.55]).Sample((n, i) =>
    {
        var t = Math.Asin(Math.Sin(i) / n);
        var across = Math.Pow(Math.Sin(i - t) / Math.Sin(i + t), 2);
        var inPlane = Math.Pow(Math.Tan(i - t) / Math.Tan(i + t), 2);
        Assert.Equal((across + inPlane) / 2, new Gloss(n).Share(Math.Cos(i)), 1e-9);
        Assert.Equal(inPlane / (across + inPlane), new Gloss(n).PolarisedRest(Math.Cos(i)), 1e-7);
    });

    [Fact]
    public void PolarisedRest_AtTheAngleWhoseTangentIsTheIndex_IsNone() => Indices.Sample(n =>
        Assert.Equal(0, new Gloss(n).PolarisedRest(Math.Cos(Math.Atan(n))), 1e-12));

    [Fact]
    public void Metal_MirrorsMost_AtEveryAngle()
    {
        Assert.Equal((Gloss.MetalShare, Gloss.MetalShare, 1), (new Gloss(null).Share(1), new Gloss(null).Share(0.1), new Gloss(null).PolarisedRest(0.5)));
    }
}

using CsCheck;

namespace StudioCalc.Maths.Tests;

/// <summary>Black cards, put in place and traced again with other sight lines.</summary>
public sealed class MirrorCardTests
{
    [Fact]
    public void Card_InPlace_LeavesNothingOfTheReflection() => Gen.Select(Mirrors.Shapes, Mirrors.Cameras, Mirrors.Things, Gen.Double[100, 450]).Sample(
        (shape, camera, thing, distance) =>
        {
            var view = Mirrors.View(shape, camera, 64, thing);
            foreach (var reflection in view.Reflections)
            {
                if (view.Card(reflection, distance) is { } card)
                {
                    Assert.Equal(0, view.LeftShare(card, 0));
                    Assert.InRange(Mirrors.Share(Mirrors.View(shape, camera, 97, thing, card.Face), 0), 0, 3e-4);
                    Assert.Equal(distance, (card.Centre - reflection.Middle).Dot(card.Towards), 1e-6);
                }
            }
        },
        iter: 80);

    // The mirrored rays come from the camera's image: what the thing's outline covers of the card's plane, within the surface's.
    [Fact]
    public void Card_BeforeAPlane_IsTheShadowOfTheThingFromTheImage()
    {
        var camera = new Vector(0, -500, 500);
        var thing = Mirrors.Rectangle(new(0, 800, 800), 200, 120);
        var view = Mirrors.View(Mirrors.Flat(400, 400), camera, 128, thing);
        var reflection = Assert.Single(view.Reflections);
        var card = view.Card(reflection, 400)!;
        var image = camera with { Z = -camera.Z };
        var axes = new FaceAxes(card.Centre, card.Centre - card.Towards);
        var shadow = thing.Hull(default).Select(corner =>
        {
            var at = image + (corner - image) * ((axes.Centre - image).Dot(axes.Facing) / (corner - image).Dot(axes.Facing));
            return ((at - axes.Centre).Dot(axes.Right), (at - axes.Centre).Dot(axes.Up));
        }).ToList();
        Assert.InRange(card.WidthMm - (shadow.Max(at => at.Item1) - shadow.Min(at => at.Item1)), 0, 6);
        Assert.InRange(card.HeightMm - (shadow.Max(at => at.Item2) - shadow.Min(at => at.Item2)), 0, 6);
        Assert.All(shadow, at => Assert.True(Math.Abs(at.Item1) <= card.WidthMm / 2 && Math.Abs(at.Item2) <= card.HeightMm / 2));
    }

    [Fact]
    public void Card_BeforeAWavingPlane_HoldsTheWholeThing()
    {
        var camera = new Vector(0, -500, 500);
        var (shape, thing) = (Mirrors.Flat(80, 80, wave: 6), Mirrors.Rectangle(new(0, 800, 800), 300, 300));
        var view = Mirrors.View(shape, camera, 48, thing);
        var card = view.Card(Assert.Single(view.Reflections), 400)!;
        Assert.Equal(0, view.LeftShare(card, 0));
        Assert.InRange(Mirrors.Share(Mirrors.View(shape, camera, 61, thing, card.Face), 0), 0, 1e-9);
    }

    [Fact]
    public void Card_BeyondTheThing_IsNone()
    {
        var camera = new Vector(0, -500, 500);
        var view = Mirrors.View(Mirrors.Flat(80, 80), camera, 32, new MirrorBall(new(0, 300, 300), 150));
        Assert.NotNull(view.Card(Assert.Single(view.Reflections), 300));
        Assert.Null(view.Card(view.Reflections[0], 500));
    }

    [Fact]
    public void Card_OfTheCamera_HidesTheSurfaceFromIt()
    {
        var camera = new Vector(0, 0, 600);
        var view = Mirrors.View(Mirrors.Flat(80, 80), camera, 32, new MirrorBall(new(0, 0, 700), 190));
        var card = view.Card(Assert.Single(view.Reflections), 300)!;
        Assert.Equal(1, view.HiddenShare(card), 1e-9);
        Assert.Equal(view.Reflections[0].CoveredShare, view.TakenShare(card, thing => thing == 0), 1e-9);
        Assert.Equal(0, view.TakenShare(card, _ => false));
    }
}

using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EvaluateReflectionsTests
{
    public static TheoryData<string, string, Action<EvaluateReflectionsRequest>> Bad => new()
    {
        { "surfaces[1].refractive_index", "CONFLICT", request => request.Surfaces[1].Metal = true },
        { "surfaces[0].flat.pose.aim_point", "CONFLICT", request => request.Surfaces[0].Flat.Pose.AimPoint = request.Surfaces[0].Flat.Pose.Position.Clone() },
        { "things[1].face.point", "CONFLICT", request => request.Things[1].Face.Point = new() },
        { "things[1].face.pose.aim_point", "CONFLICT", request => request.Things[1].Face.Pose.AimPoint = request.Things[1].Face.Pose.Position.Clone() },
        { "things[2].two_sided", "CONFLICT", request => request.Things[2].TwoSided = true },
        { "things[0].wish", "UNKNOWN_VALUE", request => request.Things[0].Wish = HighlightWish.Unspecified },
        { "sight_lines", "OUT_OF_RANGE", request => request.SightLines = 7 },
    };

    private static EvaluateReflectionsResponse Mirror(Action<EvaluateReflectionsRequest> change)
    {
        var request = Examples.Reflections();
        change(request);
        return Calls.PlateView.EvaluateReflections(request);
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<EvaluateReflectionsRequest> spoil) =>
        Assert.Equal([(field, reason)], Calls.Refused(() => Mirror(spoil)));

    [Fact]
    public void Glaze_MirrorsTheWindowBehind_AtTheAngleOfTheCamera()
    {
        var glaze = Mirror(_ => { }).Surfaces[0];
        Assert.True(glaze.IsSeen);
        Assert.Equal(180, glaze.MirrorAzimuthDeg, 1e-9);
        Assert.Equal(Math.Atan2(402, 560) * 180 / Math.PI, glaze.MirrorElevationDeg, 1e-9);
        var window = Assert.Single(glaze.Reflections, reflection => reflection.Name == "window behind");
        Assert.True(window is { FromBehind: true, IsWanted: true, BlackCard: null });
        Assert.InRange(window.CoveredShare, 0.3, 1);
    }

    // Each card as a face of its own, two-sided and black, in the same request.
    [Fact]
    public void BlackCards_SentBack_TakeTheirReflectionsAway()
    {
        var cards = 0;
        var first = Mirror(_ => { });
        for (var i = 0; i < first.Surfaces.Count; i++)
        {
            foreach (var reflection in first.Surfaces[i].Reflections.Where(one => one.BlackCard is not null))
            {
                cards++;
                var card = reflection.BlackCard;
                var towards = Maths.Vector.Towards(card.AzimuthDeg, card.ElevationDeg);
                var second = Mirror(request => request.Things.Add(new MirroredThing
                {
                    Name = "black card",
                    TwoSided = true,
                    Face = new()
                    {
                        Rectangle = new() { WidthMm = card.WidthMm, HeightMm = card.HeightMm },
                        Pose = new()
                        {
                            Position = new() { XMm = card.Centre.XMm, YMm = card.Centre.YMm, ZMm = card.Centre.ZMm },
                            AimPoint = new()
                            {
                                XMm = card.Centre.XMm - towards.X, YMm = card.Centre.YMm - towards.Y, ZMm = card.Centre.ZMm - towards.Z,
                            },
                        },
                    },
                })).Surfaces[i];
                Assert.Equal(0, card.LeftShare);
                Assert.DoesNotContain(second.Reflections, one => one.Name == reflection.Name && one.CoveredShare > 2e-4);
                Assert.Contains(second.Reflections, one => one.Name == "black card");
            }
        }

        Assert.InRange(cards, 2, 9);
    }

    [Fact]
    public void Names_AreThoseOfTheThing_ItsFace_OrItsPlace()
    {
        var answer = Mirror(request =>
        {
            request.Things[0].ClearName();
            request.Things[0].Face.Name = "tall window";
            request.Things[1].ClearName();
        });
        Assert.Contains(answer.Surfaces[0].Reflections, reflection => reflection.Name == "tall window");
        Assert.Contains(answer.Surfaces.SelectMany(surface => surface.Reflections), reflection => reflection.Name == "thing 2");
    }

    [Fact]
    public void Surface_FromBehind_IsNotSeenAndHasNoNumbers()
    {
        var glaze = Mirror(request => request.Camera.ZMm = -300).Surfaces[0];
        Assert.Equal((false, false, false, false), (glaze.IsSeen, glaze.HasMirroredLightShare, glaze.HasMirrorAzimuthDeg, glaze.HasMirrorElevationDeg));
        Assert.Empty(glaze.Reflections);
    }

    [Fact]
    public void Metal_MirrorsMoreThanGlass()
    {
        var metal = Mirror(request =>
        {
            request.Surfaces[1].ClearRefractiveIndex();
            request.Surfaces[1].Metal = true;
        }).Surfaces[1];
        Assert.Equal(0.9, metal.MirroredLightShare);
        Assert.InRange(Mirror(_ => { }).Surfaces[1].MirroredLightShare, 0.04, 0.06);
    }

    [Fact]
    public void CardNearALamp_IsCautionedAbout_AndOneFarFromItIsNot()
    {
        Assert.Contains(
            Mirror(request => request.CardDistanceMm = 1100).Advisories,
            advisory => advisory.Code == AdvisoryCode.CardNearLamp && advisory.Severity == AdvisorySeverity.Caution);
        Assert.DoesNotContain(Mirror(request => request.CardDistanceMm = 300).Advisories, advisory => advisory.Code == AdvisoryCode.CardNearLamp);
    }
}

using System.Xml.Linq;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class RenderViewTests
{
    [Fact]
    public void Answer_HoldsTheSameNumbersAsEvaluateView()
    {
        var request = Examples.Render();
        var (evaluated, rendered) = (Calls.PlateView.EvaluateView(request.View), Calls.PlateView.RenderView(request).View);
        Assert.Equal(evaluated.Camera, rendered.Camera);
        Assert.Equal(evaluated.Components, rendered.Components);
        Assert.Equal(evaluated.Vessels, rendered.Vessels);
        Assert.Equal(evaluated.Main, rendered.Main);
    }

    [Fact]
    public void Picture_ShowsSharesOfTheAnswer()
    {
        var answer = Calls.PlateView.RenderView(Examples.Render());
        var texts = XElement.Parse(answer.Picture.Content).Descendants().Where(one => one.Name.LocalName == "text").Select(one => one.Value).ToList();
        Assert.All(answer.View.Components, one => Assert.Contains(FormattableString.Invariant($"{one.VisibleShare * 100:0} %"), texts));
        Assert.Contains("lamb slices (main)", texts);
    }

    [Fact]
    public void Bad_FieldsOfTheView_AreNamedByTheirPlace()
    {
        var request = Examples.Render();
        request.View.Scene.Components[0].Base.YMm = -5000;
        Assert.Equal("view.scene.components[0].base", Assert.Single(Calls.Refused(() => Calls.PlateView.RenderView(request))).Field);
    }
}

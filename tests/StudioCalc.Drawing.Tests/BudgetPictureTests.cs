using System.Globalization;
using System.Xml.Linq;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Drawing.Tests;

/// <summary>The timeline holds what the answer says, to scale.</summary>
public sealed class BudgetPictureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Steps_AreBoxesOfTheirLikelyTimes_OneAfterTheOther()
    {
        var boxes = Boxes(Draw());
        Assert.Equal(60 / 30.0, Width(boxes[0]) / Width(boxes[1]), 1e-2);
        Assert.Equal(Left(boxes[0]) + Width(boxes[0]), Left(boxes[1]), 0.02);
    }

    [Fact]
    public void Window_RunsFromItsClockToItsEnds_HatchedFromPessimisticToOptimistic()
    {
        var picture = Draw();
        var boxes = Boxes(picture);
        var second = Width(boxes[0]) / 60;
        var bar = boxes[^1];
        Assert.Equal(Left(boxes[1]), Left(bar), 0.02);
        Assert.Equal(50 * second, Width(bar), 0.02);
        var hatched = Assert.Single(picture.Descendants(Svg + "polygon")).Attribute("points")!.Value.Split(' ')
            .Select(point => double.Parse(point.Split(',')[0], CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(Left(bar) + 40 * second, hatched.Min(), 0.02);
        Assert.Equal(Left(bar) + 55 * second, hatched.Max(), 0.02);
    }

    [Fact]
    public void LastNeed_IsTheHeavyLine()
    {
        var picture = Draw();
        var boxes = Boxes(picture);
        var heavy = Assert.Single(picture.Descendants(Svg + "line"), line => line.Attribute("stroke-width")!.Value == "2.6");
        Assert.Equal(Left(boxes[1]) + Width(boxes[1]), Number(heavy, "x1"), 0.02);
    }

    [Fact]
    public void Texts_HoldNamesTimesSlackAndChances()
    {
        var texts = Texts(Draw());
        Assert.Contains("egg <half> & more", texts, StringComparison.Ordinal);
        Assert.Contains("1:00 (1:05)", texts, StringComparison.Ordinal);
        Assert.Contains("-0:20", texts, StringComparison.Ordinal);
        Assert.Contains("0.25", texts, StringComparison.Ordinal);
        Assert.Contains("Chance that all hold: 0.25 (error 0.01, 1000 draws, seed 3)", texts, StringComparison.Ordinal);
    }

    [Fact]
    public void WindowFarBeyondTheSteps_EndsAtTheFrame_AndIsToldByItsTime()
    {
        var picture = Draw((_, answer) => answer.Components[0].Window.Span = Span(3000, 4000, 5000));
        Assert.Contains("to 1:07:40", Texts(picture), StringComparison.Ordinal);
        Assert.All(picture.Descendants(Svg + "rect"), box => Assert.InRange(Left(box) + Width(box), 0, 1040));
    }

    [Fact]
    public void Refresh_StartsASecondBar()
    {
        var picture = Draw((request, _) =>
        {
            request.Budget.Steps[1].Refresh = new() { ComponentIndices = { 0 } };
            request.Budget.Components[0].MostRefreshes = 1;
        });
        Assert.Equal(Boxes(Draw()).Count + 1, Boxes(picture).Count);
    }

    [Fact]
    public void LookThatDoesNotEnd_HasNoTimeLeft()
    {
        var picture = Draw((_, answer) =>
        {
            answer.Components[0].HoldsOn = new() { Reason = HoldsOnReason.NoDew };
            answer.Components[0].ClearSlackS();
        });
        Assert.Contains("no end", Texts(picture), StringComparison.Ordinal);
        Assert.Empty(picture.Descendants(Svg + "polygon"));
    }

    private static XElement Draw(Action<RenderBudgetRequest, CheckBudgetResponse>? change = null)
    {
        var request = new RenderBudgetRequest
        {
            Budget = new()
            {
                Steps = { new BudgetStep { Name = "carry", Likely = S(60) }, new BudgetStep { Name = "frames", Likely = S(30) } },
                Components = { new BudgetComponent { Name = "egg <half> & more" } },
            },
        };
        var answer = new CheckBudgetResponse
        {
            AllHoldChance = 0.25,
            AllHoldChanceError = 0.01,
            Draws = 1000,
            Seed = 3,
            TightestComponent = "egg <half> & more",
            Steps =
            {
                new StepBudget { Name = "carry", Start = S(0), End = S(60), EndP90 = S(65) },
                new StepBudget { Name = "frames", Start = S(60), End = S(90), EndP90 = S(100) },
            },
            Components =
            {
                new ComponentBudget
                {
                    Name = "egg <half> & more", Window = new() { Span = Span(40, 50, 55) }, SlackS = -20, HoldChance = 0.25, ClockStarts = S(60), NeededUntil = S(90),
                },
            },
        };
        change?.Invoke(request, answer);
        return XElement.Parse(BudgetPicture.Draw(request, answer).Content);
    }

    private static HoldingSpan Span(long pessimistic, long likely, long optimistic) =>
        new() { Pessimistic = S(pessimistic), Likely = S(likely), Optimistic = S(optimistic) };

    private static Duration S(long seconds) => new() { Seconds = seconds };

    // Boxes of medium weight: steps in their order, then the bars of windows.
    private static List<XElement> Boxes(XElement picture) =>
        [.. picture.Descendants(Svg + "rect").Where(box => box.Attribute("stroke-width")?.Value == "1.3")];

    private static string Texts(XElement picture) => string.Join('\n', picture.Descendants(Svg + "text").Select(text => text.Value));

    private static double Left(XElement box) => box.Attribute("x") is null ? 0 : Number(box, "x");

    private static double Width(XElement box) => Number(box, "width");

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}

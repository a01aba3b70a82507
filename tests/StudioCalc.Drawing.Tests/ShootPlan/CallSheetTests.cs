using System.Xml.Linq;
using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Drawing.Tests;

/// <summary>The sheet is one page that needs nothing else, and says what the plan says.</summary>
public sealed class CallSheetTests
{
    [Fact]
    public void Page_HasNoScript_AndNothingFromOutside()
    {
        var page = Page(Input());
        Assert.DoesNotContain(page.Descendants(), element => element.Name.LocalName is "script" or "link" or "img" or "iframe" or "a");
        Assert.DoesNotContain(
            page.Descendants().Attributes(),
            attribute => attribute.Name.LocalName is "href" or "src" || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        Assert.DoesNotContain("url(", page.Descendants("style").Single().Value, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", page.Descendants("style").Single().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_StandBeforeAllElse()
    {
        var sections = Page(Input()).Descendants("section").Select(section => section.Attribute("id")!.Value).ToList();
        Assert.Equal(["cautions", "notes", "order", "pass", "plates"], sections);
        var text = CallSheet.Text(Input()).Content;
        Assert.True(text.IndexOf("CAUTIONS", StringComparison.Ordinal) < text.IndexOf("RUNNING ORDER", StringComparison.Ordinal));
    }

    [Fact]
    public void Names_OfCallers_AreTextAndNeverMarkup()
    {
        var input = Input();
        input.Request.Notes.Add("<script>alert(1)</script> & \u0001");
        var page = Page(input);
        Assert.Empty(page.Descendants("script"));
        Assert.Contains("<script>alert(1)</script> & \uFFFD", page.Descendants("li").Select(item => item.Value));
    }

    [Fact]
    public void Pass_ListsEachStation_InTheOrderOfTime()
    {
        var lists = Page(Input()).Descendants("section").Single(section => section.Attribute("id")!.Value == "pass").Descendants("article")
            .ToDictionary(list => list.Element("h3")!.Value, list => list.Descendants("tr").Select(row => string.Join(' ', row.Elements("td").Select(cell => cell.Value))));
        Assert.Equal(["08:20 soup until 08:30", "08:50 noodles (NOT FOR EATING) until 09:00"], lists["wok (×2)"]);
        Assert.Equal(["09:00 noodles (NOT FOR EATING): garnish until 09:02"], lists["Stylist"]);
        Assert.Equal(2, lists.Count);
    }

    [Fact]
    public void Card_TellsFireTime_Budgets_Allergens_AndWhatIsNotForEating()
    {
        var card = Page(Input()).Descendants("section").Single(section => section.Attribute("id")!.Value == "plates").Descendants("article").First().Value;
        Assert.Contains("Fire 08:50", card, StringComparison.Ordinal);
        Assert.Contains("herbs5 min09:081 min 30 s left", card, StringComparison.Ordinal);
        Assert.Contains("Allergens as declared: sesame, wheat.", card, StringComparison.Ordinal);
        Assert.Contains("NOT FOR EATING.", card, StringComparison.Ordinal);
    }

    [Fact]
    public void BrokenBudget_StandsOut()
    {
        var input = Input();
        input.Plan.Order.Solution.Plates[0].Budgets[0].SlackS = -61;
        Assert.Equal("over", Page(input).Descendants("tr").Single(row => row.Value.EndsWith("1 min 1 s too long", StringComparison.Ordinal)).Attribute("class")!.Value);
        Assert.Contains("! herbs waits at most 5 min; last frame 09:08, 1 min 1 s too long", CallSheet.Text(input).Content, StringComparison.Ordinal);
    }

    [Fact]
    public void PlanThatCannotBeKept_SaysWhyFirst()
    {
        var input = Input();
        var order = input.Plan.Order.Solution;
        input.Plan.Order.NotReached = new()
        {
            Nearest = order,
            ShortfallS = 100,
            NeverFits =
            {
                new NeverFits
                {
                    Reason = NeverFitsReason.Budget, Plate = "noodles", Component = "herbs", Least = At(300), Limit = At(200), Missing = At(100), Remedies = { "garnish on the set" },
                },
            },
        };
        var first = Page(input).Descendants("section").First();
        Assert.Equal("broken", first.Attribute("id")!.Value);
        Assert.Contains("noodles, herbs: lasts 3 min 20 s, needs at least 5 min; 1 min 40 s are missing. garnish on the set.", first.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void NoOrderAtAll_HasNoTimes()
    {
        var input = Input();
        input.Plan.Order.NotReached = new() { NeverFits = { new NeverFits { Reason = NeverFitsReason.Hours, Shot = "noodles" } } };
        Assert.Equal(["broken", "cautions", "notes"], Page(input).Descendants("section").Select(section => section.Attribute("id")!.Value));
    }

    [Fact]
    public void Break_StandsInTheOrderAtItsTime()
    {
        var input = Input();
        input.Request.Plan.Day.Crew.SetHours.Add([Open(0, 1980), Open(3000, 9000)]);
        var rows = Page(input).Descendants("section").Single(section => section.Attribute("id")!.Value == "order").Descendants("tbody").Elements("tr").Select(row => row.Value).ToList();
        Assert.StartsWith("08:33–08:50Break", rows[0], StringComparison.Ordinal);
        Assert.Contains("1. noodles", rows[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Seconds_AreTold_WhereAnyTimeHasSome()
    {
        var input = Input();
        Assert.Contains("09:03–09:08", CallSheet.Text(input).Content, StringComparison.Ordinal);
        input.Plan.Order.Solution.Shots[0].End = At(4110);
        Assert.Contains("09:03:00–09:08:30", CallSheet.Text(input).Content, StringComparison.Ordinal);
    }

    [Fact]
    public void TimesAfterMidnight_TellTheDay()
    {
        var input = Input();
        var night = input with { Local = after => new DateTimeOffset(2026, 11, 26, 23, 0, 0, TimeSpan.FromHours(1)) + after.ToTimeSpan() };
        Assert.Contains("00:03 (+1 day)–00:08 (+1 day)", CallSheet.Text(night).Content, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_KeepsTo80Columns() => Assert.All(
        CallSheet.Text(Input()).Content.Split('\n'), line => Assert.True(line.Length <= 80, line));

    [Theory]
    [InlineData(SheetPaper.Unspecified, "size: A4")]
    [InlineData(SheetPaper.A4, "size: A4")]
    [InlineData(SheetPaper.Letter, "size: letter")]
    public void Paper_IsTheOneAsked(SheetPaper paper, string size)
    {
        var input = Input();
        if (paper != SheetPaper.Unspecified)
        {
            input.Request.Paper = paper;
        }

        Assert.Contains(size, Page(input).Descendants("style").Single().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Floor_StandsInThePage()
    {
        var input = Input() with { Floor = new() { Content = "<svg xmlns=\"http://www.w3.org/2000/svg\"><title>floor</title></svg>" } };
        Assert.Equal("floor", Page(input).Descendants().Single(element => element.Name.LocalName == "svg").Value);
    }

    private static XElement Page(CallSheetInput input)
    {
        var html = CallSheet.Html(input).Content;
        Assert.StartsWith("<!DOCTYPE html>\n", html, StringComparison.Ordinal);
        return XElement.Parse(html["<!DOCTYPE html>\n".Length..]);
    }

    private static CallSheetInput Input()
    {
        var day = new ShootDay
        {
            Crew = new() { Stations = { new KitchenStation { Name = "wok", Count = 2 }, new KitchenStation { Name = "oven" } } },
            Plates =
            {
                new DayPlate { Name = "noodles", Allergens = { "sesame", "wheat" }, NotForEating = true },
                new DayPlate { Name = "soup" },
            },
            Shots = { new DayShot { Name = "noodles", Plates = { "noodles", "soup" } } },
        };
        var order = new ShootOrder
        {
            Shots = { new OrderedShot { Name = "noodles", Place = 1, SetupStart = At(3000), SetupTime = At(600), Start = At(3780), End = At(4080), Approved = At(4080) } },
            Plates =
            {
                new OrderedPlate
                {
                    Name = "noodles",
                    Fire = At(3000),
                    Landed = At(3720),
                    Wait = At(60),
                    Stages = { Cook(3000, 3600), new TimedStage { Kind = PlateStageKind.Garnish, Start = At(3600), End = At(3720) } },
                    Budgets = { new TimedBudget { Component = "herbs", Limit = At(300), NeededUntil = At(4080), SlackS = 90 } },
                },
                new OrderedPlate { Name = "soup", Fire = At(1200), Landed = At(1800), Wait = At(1980), Stages = { Cook(1200, 1800) } },
            },
            Finish = At(4080),
            ChangeTime = At(600),
            IsProved = true,
        };
        var plan = new PlanShootResponse
        {
            TimeZone = "Europe/Vienna",
            ModelRevision = "1",
            Order = new() { Solution = order },
            Advisories = { new Advisory { Code = AdvisoryCode.AllergensAsDeclared, Severity = AdvisorySeverity.Caution, Text = "As declared." } },
        };
        return new(
            new() { Plan = new() { Day = day }, Notes = { "Lunch at noon." } },
            plan,
            null,
            after => new DateTimeOffset(2026, 11, 26, 8, 0, 0, TimeSpan.FromHours(1)) + after.ToTimeSpan());
    }

    private static TimedStage Cook(int from, int until) => new() { Kind = PlateStageKind.Cook, Station = "wok", Start = At(from), End = At(until) };

    private static OpenHours Open(int from, int until) => new() { From = At(from), Until = At(until) };

    private static Duration At(int seconds) => new() { Seconds = seconds };
}

using System.Text.RegularExpressions;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

/// <summary>The call sheet shows the plan that it was made from, in local time.</summary>
public sealed partial class RenderCallSheetTests
{
    [Fact]
    public void Sheet_OfTheDemoDay_NamesEveryShotAndPlate_InAllThreeForms()
    {
        var request = Examples.CallSheet();
        var sheet = Calls.ShootPlan.RenderCallSheet(request);
        var calendar = sheet.Calendar.Content.Replace("\r\n ", "", StringComparison.Ordinal).Replace("\\,", ",", StringComparison.Ordinal);
        foreach (var name in request.Plan.Day.Shots.Select(shot => shot.Name).Concat(request.Plan.Day.Plates.Select(plate => plate.Name)))
        {
            Assert.Contains(name, sheet.Html.Content, StringComparison.Ordinal);
            Assert.Contains(name, Blanks().Replace(sheet.Text.Content, " "), StringComparison.Ordinal);
        }

        var order = sheet.Plan.Order.Solution;
        Assert.All(order.Shots, shot => Assert.Contains($"SUMMARY:{shot.Place}. {shot.Name}", calendar, StringComparison.Ordinal));
        Assert.All(order.Plates, plate => Assert.Contains($"SUMMARY:Fire {plate.Name}", calendar, StringComparison.Ordinal));

        Assert.Contains("<svg", sheet.Html.Content, StringComparison.Ordinal);
        Assert.Equal(Calls.ShootPlan.PlanShoot(request.Plan), sheet.Plan);
        Assert.Equal(
            ["call-sheet.html", "call-sheet.txt", "call-sheet.ics"], new[] { sheet.Html, sheet.Text, sheet.Calendar }.Select(document => document.FileName));
    }

    [Fact]
    public void Times_AreThoseOfTheZone()
    {
        var sheet = Calls.ShootPlan.RenderCallSheet(new() { Plan = SmallDay.Plan() });
        var fire = sheet.Plan.Order.Solution.Plates[0].Fire.ToTimeSpan();
        var local = new DateTime(2026, 11, 26, 9, 0, 0, DateTimeKind.Unspecified) + fire;
        Assert.Contains($"Fire {local:HH:mm}", sheet.Html.Content, StringComparison.Ordinal);
        Assert.Contains($"DTSTART;TZID=Europe/Vienna:{local:yyyyMMdd'T'HHmmss}", sheet.Calendar.Content, StringComparison.Ordinal);
    }

    [Fact]
    public void DayOverAChangeOfTheClocks_TellsEachTimeWithItsOffset()
    {
        // Summer time ends at 3:00, an hour after the start: the shot is after it.
        var request = SmallDay.Plan();
        request.Start = new() { LocalTime = "2026-10-25T02:00", UtcOffsetMinutes = 120, TimeZone = "Europe/Vienna" };
        request.Day.Shots[0].Hours.Add(new OpenHours { From = SmallDay.Seconds(4500), Until = SmallDay.Seconds(6000) });
        var sheet = Calls.ShootPlan.RenderCallSheet(new() { Plan = request });
        Assert.Contains("start 02:00 UTC+02:00", sheet.Text.Content, StringComparison.Ordinal);
        Assert.Contains("02:15 UTC+01:00–02:19 UTC+01:00", sheet.Text.Content, StringComparison.Ordinal);
    }

    [Fact]
    public void BadFieldsOfFloorAndPlan_AreToldTogether()
    {
        var request = Examples.CallSheet();
        request.Plan.Start.TimeZone = "Noodle/Bowl";
        request.Floor.Occluders[0].Tube.To = request.Floor.Occluders[0].Tube.From;
        Assert.Equal(
            [("floor.occluders[0].tube.to", "CONFLICT"), ("plan.start.time_zone", "UNKNOWN_MARK")],
            Calls.Refused(() => Calls.ShootPlan.RenderCallSheet(request)));
    }

    [GeneratedRegex(@"\s+", RegexOptions.None, 1000)]
    private static partial Regex Blanks();
}

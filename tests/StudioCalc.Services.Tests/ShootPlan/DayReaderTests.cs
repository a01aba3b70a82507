using Google.Protobuf.WellKnownTypes;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class DayReaderTests
{
    public static TheoryData<string, string, Action<ShootDay>> Bad => new()
    {
        { "day.plates[7].name", "CONFLICT", day => day.Plates[7].Name = day.Plates[0].Name },
        { "day.shots[3].name", "CONFLICT", day => day.Shots[3].Name = day.Shots[0].Name },
        { "day.crew.stations[2].name", "CONFLICT", day => day.Crew.Stations.Add(day.Crew.Stations[1].Clone()) },
        { "day.crew.stations[2].name", "CONFLICT", day => day.Crew.Stations.Add(new KitchenStation { Name = "stylist" }) },
        { "day.shots[0].plates[1]", "CONFLICT", day => day.Shots[0].Plates.Add("nothing of that name") },
        { "day.shots[0].plates[1]", "CONFLICT", day => day.Shots[0].Plates.Add("sesame noodles") },
        { "day.plates[3].name", "CONFLICT", day => day.Shots[3].Plates.RemoveAt(1) },
        { "day.plates[7].name", "CONFLICT", day => day.Plates[7].ClearUse() },
        { "day.plates[7].budgets", "CONFLICT", day => day.Plates[7].Budgets.Add(day.Plates[0].Budgets[1].Clone()) },
        { "day.plates[0].stages[0].station", "REQUIRED", day => day.Plates[0].Stages[0].ClearStation() },
        { "day.plates[0].stages[0].station", "CONFLICT", day => day.Plates[0].Stages[0].Station = "grill" },
        { "day.plates[0].stages[1].station", "CONFLICT", day => day.Plates[0].Stages[1].Station = "wok" },
        { "day.plates[0].stages[0].time.shortest", "CONFLICT", day => day.Plates[0].Stages[0].Time.Shortest = S(421) },
        { "day.plates[0].stages[0].time.longest", "CONFLICT", day => day.Plates[0].Stages[0].Time.Longest = S(419) },
        { "day.shots[0].approval.shortest", "CONFLICT", day => day.Shots[0].Approval.Shortest = S(121) },
        { "day.shots[0].frames.try_time.longest", "CONFLICT", day => day.Shots[0].Frames.TryTime.Longest = S(44) },
        { "day.shots[0].frames.most_tries", "CONFLICT", day => day.Shots[0].Frames.Keepers = 9 },
        { "day.plates[2].budgets[0].event", "CONFLICT", day => day.Plates[2].Budgets[0].Event = PlateEvent.OffHeat },
        { "day.plates[0].budgets[0].last_shot", "CONFLICT", day => day.Plates[0].Budgets[0].LastShot = "hummus swirl" },
        { "day.plates[0].budgets[1].needed_for", "CONFLICT", day => day.Plates[0].Budgets[1].NeededFor = S(301) },
        { "day.plates[2].budgets[0].needed_for", "CONFLICT", day => day.Plates[2].Budgets[0].NeededFor = S(331) },
        { "day.plates[0].budgets[0].ends_at", "CONFLICT", day => day.Plates[0].Budgets[0].EndsAt = new() { SurfaceCelsius = 40 } },
        { "day.plates[1].budgets[0].ends_at", "REQUIRED", day => day.Plates[1].Budgets[0].EndsAt = null },
        { "day.plates[1].budgets[1].food.profile_id", "UNKNOWN_MARK", day => day.Plates[1].Budgets[1].Food.ProfileId = "stone" },
        { "day.plates[1].budgets[1].food.profile_id", "CONFLICT", day => day.Plates[1].Budgets[1].Food.ProfileId = "sliced-rare-meat-pinks" },
        { "day.air", "REQUIRED", day => day.Air = null },
        { "day.crew.set_hours[1].from", "CONFLICT", day => day.Crew.SetHours[1].From = S(4499) },
        { "day.crew.stylist_hours[0].until", "CONFLICT", day => day.Crew.StylistHours[0].Until = S(0) },
        { "day.shots[1].hours[0].until", "CONFLICT", day => day.Shots[1].Hours[0].Until = S(7800) },
        { "day.crew.stations[0].hours[0].until", "CONFLICT", day => day.Crew.Stations[0].Hours.Add(new OpenHours { From = S(9), Until = S(8) }) },
        { "day.shots[0].attributes[1].name", "CONFLICT", day => day.Shots[0].Attributes[1].Name = "angle" },
        { "day.shots[0].attributes[1].name", "CONFLICT", day => day.Shots[0].Attributes[1].Name = "weather" },
        { "day.changes.attributes[1].name", "CONFLICT", day => TwiceTheAngle(day) },
        { "day.shots[6].position", "OUT_OF_RANGE", day => day.Shots[6].Position = 7 },
        { "day.shots[3].position", "CONFLICT", day => (day.Shots[2].Position, day.Shots[3].Position) = (1, 2) },
        { "day.shots[4].position", "CONFLICT", day => (day.Shots[2].Position, day.Shots[4].Position) = (2, 2) },
        { "day.changes.matrix", "CONFLICT", day => Matrix(day, 6, 7) },
        { "day.changes.matrix[6].to", "CONFLICT", day => Matrix(day, 7, 7).Matrix[6].To.RemoveAt(0) },
        { "day.changes.side_by_side", "CONFLICT", day => Matrix(day, 7, 7).SideBySide = false },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void SequenceShoot_FieldsThatContradict_AreRefusedByPath(string field, string reason, Action<ShootDay> change)
    {
        var request = Examples.Sequence();
        change(request.Day);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.ShootPlan.SequenceShoot(request)));
    }

    [Fact]
    public void SequenceShoot_ATableBesideAttributes_IsRefusedWithEachAttribute()
    {
        var request = Examples.Sequence();
        request.Day.Changes.Matrix.Add(Enumerable.Range(0, 7).Select(_ => new SetChangeRow { To = { Enumerable.Range(0, 7).Select(_ => S(60)) } }));
        Assert.Equal([("day.changes.attributes", "CONFLICT")], Calls.Refused(() => Calls.ShootPlan.SequenceShoot(request)));
    }

    [Fact]
    public void SequenceShoot_SeveralBadFields_AreAllNamed()
    {
        var request = Examples.Sequence();
        request.Day.Plates[0].Stages[0].ClearStation();
        request.Day.Shots[6].Position = 60;
        request.Day.Air = null;
        Assert.Equal(
            ["day.plates[0].stages[0].station", "day.air", "day.shots[6].position"],
            Calls.Refused(() => Calls.ShootPlan.SequenceShoot(request)).Select(bad => bad.Field));
    }

    [Fact]
    public void Groups_ShotsThatShareOverAThird_AreOneInTheirOrder()
    {
        var shots = new[] { Of("a"), Of("c"), Of("b"), Of("a", "b") };
        var groups = ShotGroups.Of(shots, new Dictionary<string, int> { ["a"] = 0, ["b"] = 1, ["c"] = 2 });
        Assert.Equal([0, 1, 0, 0], groups.GroupOf);
        Assert.Equal([[0, 2, 3], [1]], groups.Shots);
        Assert.Equal([[0, 1], [2]], groups.Plates);

        static DayShot Of(params string[] plates) => new() { Plates = { plates } };
    }

    internal static Duration S(int seconds) => new() { Seconds = seconds };

    private static SetChanges Matrix(ShootDay day, int rows, int columns)
    {
        day.Changes.Attributes.Clear();
        foreach (var shot in day.Shots)
        {
            shot.Attributes.Clear();
        }

        day.Changes.Matrix.Add(Enumerable.Range(0, rows).Select(_ => new SetChangeRow { To = { Enumerable.Range(0, columns).Select(_ => S(60)) } }));
        return day.Changes;
    }

    private static void TwiceTheAngle(ShootDay day)
    {
        day.Changes.Attributes.Insert(1, day.Changes.Attributes[0].Clone());
    }
}

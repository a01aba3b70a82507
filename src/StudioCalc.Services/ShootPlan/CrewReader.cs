using StudioCalc.Planning;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>What a day occupies: the resources, and which of them is what.</summary>
internal sealed record CrewRead(IReadOnlyList<Resource> Resources, IReadOnlyDictionary<string, int> Stations, int Stylist, int? Runner, int Set);

/// <summary>Reads who and what makes a day.</summary>
internal static class CrewReader
{
    public const string StylistName = "stylist";
    public const string RunnerName = "runner";
    public const string SetName = "set";

    public static CrewRead ReadCrew(this RequestContext context, Crew? crew, FieldPath path)
    {
        crew ??= new();
        var stationsPath = path[Crew.StationsFieldNumber];
        List<Resource> resources = [];
        for (var i = 0; i < crew.Stations.Count; i++)
        {
            var station = crew.Stations[i];
            if (station.Name is StylistName or RunnerName or SetName)
            {
                context.Refuse(stationsPath.At(i)[KitchenStation.NameFieldNumber].ToString(), "This name stands for a part of the crew: take another.");
            }

            resources.Add(new()
            {
                Id = station.Name,
                Capacity = station.HasCount ? (int)station.Count : 1,
                Open = context.ReadHours(station.Hours, stationsPath.At(i)[KitchenStation.HoursFieldNumber]),
            });
        }

        var stations = context.ReadNames(
            crew.Stations.Select(station => station.Name), i => stationsPath.At(i)[KitchenStation.NameFieldNumber].ToString());
        var stylist = resources.Count;
        resources.Add(new()
        {
            Id = StylistName,
            Capacity = crew.HasStylists ? (int)crew.Stylists : 1,
            Open = context.ReadHours(crew.StylistHours, path[Crew.StylistHoursFieldNumber]),
        });
        int? runner = crew.Runners > 0 ? resources.Count : null;
        if (runner is not null)
        {
            resources.Add(new() { Id = RunnerName, Capacity = (int)crew.Runners });
        }

        resources.Add(new() { Id = SetName, Open = context.ReadHours(crew.SetHours, path[Crew.SetHoursFieldNumber]) });
        return new(resources, stations, stylist, runner, resources.Count - 1);
    }
}

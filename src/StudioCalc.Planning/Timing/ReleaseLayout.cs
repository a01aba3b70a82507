namespace StudioCalc.Planning;

/// <summary>Where the moments at which each unit of each resource is free lie in one array: units in rising order, the finish last.</summary>
internal sealed class ReleaseLayout
{
    public ReleaseLayout(IReadOnlyList<Resource> resources)
    {
        Capacity = [.. resources.Select(resource => resource.Capacity)];
        At = new int[Capacity.Length];
        var length = 0;
        for (var i = 0; i < Capacity.Length; i++)
        {
            At[i] = length;
            length += Capacity[i];
        }

        Finish = length;
        Length = length + 1;
        HasUnits = Capacity.Any(capacity => capacity > 1);
    }

    public int[] Capacity { get; }

    public int[] At { get; }

    public int Finish { get; }

    public int Length { get; }

    public bool HasUnits { get; }

    /// <summary>Takes the first free unit of a resource; the others begin nothing before that either.</summary>
    public void Take(Span<long> free, int resource, long start, long end)
    {
        var units = free.Slice(At[resource], Capacity[resource]);
        for (var u = 1; u < units.Length; u++)
        {
            units[u - 1] = Math.Max(units[u], start);
        }

        var at = units.Length - 1;
        for (; at > 0 && units[at - 1] > end; at--)
        {
            units[at] = units[at - 1];
        }

        units[at] = end;
    }
}

using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>Writes a fall-off map.</summary>
internal static class MapWriter
{
    public static MapFallOffResponse Write(FallOffMap map)
    {
        var area = map.Area;
        var response = new MapFallOffResponse
        {
            Brightest = map.Brightest.ToAnswer(),
            Darkest = map.Darkest.ToAnswer(),
            ModelRevision = ModelRevision.Current,
        };
        for (var column = 0; column < area.Columns; column++)
        {
            response.ColumnsXMm.Add(area.At(column, 0).X);
        }

        for (var row = 0; row < area.Rows; row++)
        {
            response.Rows.Add(Row(map, row));
        }

        if (map.FrontToBackStops is { } frontToBack)
        {
            response.FrontToBackStops = frontToBack;
        }

        if (map.RightToLeftStops is { } rightToLeft)
        {
            response.RightToLeftStops = rightToLeft;
        }

        if (map.SpreadStops is { } spread)
        {
            response.SpreadStops = spread;
        }

        return response;
    }

    private static FallOffRow Row(FallOffMap map, int row)
    {
        var answer = new FallOffRow { YMm = map.Area.At(0, row).Y, OverMiddleStops = { Capacity = map.Area.Columns } };
        for (var column = 0; column < map.Area.Columns; column++)
        {
            if (map.IsDark(column, row))
            {
                answer.DarkColumns.Add((uint)column);
            }

            if (map.Middle > 0)
            {
                answer.OverMiddleStops.Add(map.StopsAt(column, row) ?? 0);
            }
        }

        return answer;
    }
}

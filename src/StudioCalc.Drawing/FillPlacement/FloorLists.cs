using StudioCalc.V1;

namespace StudioCalc.Drawing;

/// <summary>What stands under a floor sketch: a list of the lights and one of the receivers.</summary>
internal sealed class FloorLists(FloorScene scene)
{
    private const double Row = 20;
    private const double Width = 1000;

    private static readonly (string Name, double At)[] SourceHeads =
    [
        ("", 0), ("Light", 40), ("Size", 260), ("Power", 430), ("From its aim", 520), ("Elevation", 640), ("Azimuth", 740), ("Middle over table", 840),
    ];

    private static readonly (string Name, double At)[] ReceiverHeads =
    [
        ("", 0), ("Receiver", 40), ("Over setting", 260), ("Over no. 1", 380), ("Flash meters", 490), ("Shares of the light", 600),
    ];

    /// <summary>How much room they need.</summary>
    public double Height => Row * (scene.Sources.Count + scene.Request.Receivers.Count + 3);

    /// <summary>What the sketch shows, in two lines.</summary>
    public static string[] Summary(FloorScene scene) =>
    [
        "Heights count from the table" + (scene.Request.Table is { } table ? $", whose top is {FloorScene.Metres(table.HeightMm)} over the floor." : "."),
        "Lengths beside letters run from a light to what it is aimed at; figures beside numbers are stops over "
            + (scene.Request.Settings is null ? "receiver 1." : "the setting."),
    ];

    public void Write(Sheet sheet, double left, double y)
    {
        WriteRow(sheet, left, y, SourceHeads, [.. SourceHeads.Select(head => head.Name)], bold: true);
        for (var i = 0; i < scene.Sources.Count; i++)
        {
            y += Row;
            var source = scene.Sources[i];
            var (elevation, azimuth) = scene.Direction(i);
            WriteRow(sheet, left, y, SourceHeads,
            [
                FloorScene.Letter(i), source.Name, source.Size, source.Power, FloorScene.Metres(scene.DistanceMm(i)),
                FormattableString.Invariant($"{elevation:0} °"), FormattableString.Invariant($"{azimuth:0} °"), FloorScene.Metres(source.Centre.ZMm),
            ]);
        }

        y += 2 * Row;
        WriteRow(sheet, left, y, ReceiverHeads, [.. ReceiverHeads.Select(head => head.Name)], bold: true);
        for (var i = 0; i < scene.Light.Count; i++)
        {
            y += Row;
            var light = scene.Light[i];
            WriteRow(sheet, left, y, ReceiverHeads,
            [
                FormattableString.Invariant($"{i + 1}"),
                light.Name,
                light.HasOverSettingsStops ? FloorScene.Signed(light.OverSettingsStops) : "",
                light.HasOverReferenceStops ? FloorScene.Signed(light.OverReferenceStops) : "",
                light.FlashMeters is { } meters ? meters.HasMark ? meters.Mark : FormattableString.Invariant($"f/{meters.FNumber:0.#}") : "",
                Shares(light),
            ]);
        }
    }

    private static string Shares(ReceivedLight light) => string.Join(", ", light.Sources
        .Select((source, i) => (source, i))
        .Where(one => one.source.HasLightShare && light.Sources.Count > 1)
        .Select(one => FormattableString.Invariant($"{FloorScene.Letter(one.i)} {one.source.LightShare * 100:0} %")));

    private static void WriteRow(Sheet sheet, double left, double y, (string Name, double At)[] heads, string[] cells, bool bold = false)
    {
        for (var i = 0; i < heads.Length; i++)
        {
            if (cells[i].Length > 0)
            {
                var room = (i + 1 < heads.Length ? heads[i + 1].At : Width) - heads[i].At - Sheet.Letter;
                sheet.Text(left + heads[i].At, y, bold ? cells[i] : Sheet.Cut(cells[i], room), bold);
            }
        }
    }
}

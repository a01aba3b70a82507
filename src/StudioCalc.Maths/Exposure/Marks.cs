namespace StudioCalc.Maths;

/// <summary>The marks of aperture, shutter speed and ISO.</summary>
/// <remarks>Sources: docs/models/exposure.md, section Marks, which says for each list whether it is published
/// or common practice.</remarks>
public static class Marks
{
    /// <summary>Changes with any mark of any list.</summary>
    public const string CatalogueVersion = "1";

    /// <summary>Aperture marks, from f/0.7 to f/90. Values are f-numbers; tenths count towards the smaller opening.</summary>
    public static MarkSeries Aperture { get; } = new(
        prefix: "f/",
        spoken: "f",
        unit: "",
        @base: 1,
        exponent: 0.5,
        upAdmitsLess: true,
        showsTenths: true,
        aliases: new Dictionary<string, string>(),
        new(StopScale.Whole, -1, """
            0.7 1.0 1.4 2 2.8 4 5.6 8 11 16 22 32 45 64 90
            """),
        new(StopScale.Half, -2, """
            0.7 0.8 1.0 1.2 1.4 1.7 2 2.4 2.8 3.3 4 4.8 5.6 6.7 8 9.5 11 13 16 19 22 27 32 38 45 54 64 76
            90
            """),
        new(StopScale.Third, -3, """
            0.7 0.8 0.9 1.0 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14
            16 18 20 22 25 29 32 36 40 45 51 57 64 72 81 90
            """));

    /// <summary>Shutter speed marks, from 1/16000 s to 60 s. Values are seconds.</summary>
    public static MarkSeries ShutterSpeed { get; } = new(
        prefix: "",
        spoken: "",
        unit: "s",
        @base: 1,
        exponent: 1,
        upAdmitsLess: false,
        showsTenths: false,
        aliases: new Dictionary<string, string>
        {
            ["1/2"] = "0.5",
            ["1/3"] = "0.3",
            ["1/1.3"] = "0.8",
            ["1/1.5"] = "0.7",
            ["1/1.6"] = "0.6",
            ["1/2.5"] = "0.4",
            ["1/11"] = "1/10",
            ["1/23"] = "1/20",
        },
        new(StopScale.Whole, -14, """
            1/16000 1/8000 1/4000 1/2000 1/1000 1/500 1/250 1/125 1/60 1/30 1/15 1/8 1/4 0.5 1 2 4 8 15 30
            60
            """),
        new(StopScale.Half, -28, """
            1/16000 1/12000 1/8000 1/6000 1/4000 1/3000 1/2000 1/1500 1/1000 1/750 1/500 1/350 1/250 1/180
            1/125 1/90 1/60 1/45 1/30 1/20 1/15 1/10 1/8 1/6 1/4 0.3 0.5 0.7 1 1.5 2 3 4 6 8 10 15 20 30 45
            60
            """),
        new(StopScale.Third, -42, """
            1/16000 1/12800 1/10000 1/8000 1/6400 1/5000 1/4000 1/3200 1/2500 1/2000 1/1600 1/1250 1/1000
            1/800 1/640 1/500 1/400 1/320 1/250 1/200 1/160 1/125 1/100 1/80 1/60 1/50 1/40 1/30 1/25 1/20
            1/15 1/13 1/10 1/8 1/6 1/5 1/4 0.3 0.4 0.5 0.6 0.8 1 1.3 1.6 2 2.5 3.2 4 5 6 8 10 13 15 20 25
            30 40 50 60
            """));

    /// <summary>ISO marks, from 25 to 409600, on the binary scale of cameras. Values are arithmetic speeds.</summary>
    public static MarkSeries Iso { get; } = new(
        prefix: "",
        spoken: "ISO",
        unit: "",
        @base: 100,
        exponent: 1,
        upAdmitsLess: false,
        showsTenths: false,
        aliases: new Dictionary<string, string>(),
        new(StopScale.Whole, -2, """
            25 50 100 200 400 800 1600 3200 6400 12800 25600 51200 102400 204800 409600
            """),
        new(StopScale.Half, -4, """
            25 35 50 70 100 140 200 280 400 560 800 1100 1600 2200 3200 4500 6400 9000 12800 18000 25600
            36000 51200 72000 102400 144000 204800 288000 409600
            """),
        new(StopScale.Third, -6, """
            25 32 40 50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000
            5000 6400 8000 10000 12800 16000 20000 25600 32000 40000 51200 64000 80000 102400 128000 160000
            204800 256000 320000 409600
            """));
}

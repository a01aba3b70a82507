using System.Text.Json;
using StudioCalc.Tests;

namespace StudioCalc.Photos.Tests;

/// <summary>The pace of a shoot from the times of its frames.</summary>
public sealed class PaceTests
{
    private static readonly DateTime Morning = new(2026, 11, 25, 9, 0, 0);

    // Three dishes: 4 frames in 6 minutes, 12 minutes of changeover, 2 frames in 2 minutes, 5 hours, 3 frames in 4 minutes.
    private static readonly double[] Minutes = [0, 2, 4, 6, 18, 20, 320, 322, 324];

    [Fact]
    public void Pace_ByGaps_TellsDishesApart()
    {
        var pace = ShootPace.Of(Frames(Minutes), new());
        Assert.Equal(["dish 1", "dish 2", "dish 3"], pace.Dishes.Select(dish => dish.Dish));
        Assert.Equal([4, 2, 3], pace.Dishes.Select(dish => dish.Frames));
        Assert.Equal([6.0, 2.0, 4.0], pace.Dishes.Select(dish => dish.Minutes));
        Assert.Equal([12.0, null, null], pace.Dishes.Select(dish => dish.ChangeoverMinutes));
        Assert.Equal(24 / 60.0, pace.Hours, 1e-12);
        Assert.Equal(3 / 0.4, pace.DishesPerHour!.Value, 1e-9);
        Assert.Equal(9 / 0.4, pace.FramesPerHour!.Value, 1e-9);
        Assert.Equal(new Spread(3, 4, 2.4, 5.6), pace.DishMinutes);
        Assert.Equal(new Spread(6, 120, 120, 120), pace.FrameGapSeconds);
        Assert.Null(pace.KeepRate);
        Assert.Equal("time-offset:missing", Assert.Single(pace.Notes).Code);
    }

    [Fact]
    public void Pace_WithALongerGap_HasFewerDishes() =>
        Assert.Equal([6, 3], ShootPace.Of(Frames(Minutes), new() { Gap = TimeSpan.FromMinutes(15) }).Dishes.Select(dish => dish.Frames));

    [Fact]
    public void Pace_OfFramesInAnyOrder_IsTheSame()
    {
        var pace = ShootPace.Of(Enumerable.Reverse(Frames(Minutes)), new());
        Assert.Equal(PaceText.Json(ShootPace.Of(Frames(Minutes), new())), PaceText.Json(pace));
    }

    [Fact]
    public void Pace_WithKeptFrames_TellsTheKeepRate()
    {
        var pace = ShootPace.Of(Frames(Minutes), new() { Kept = new(["f0.jpg", "f5", "inner\\f6.jpg", " F8 "]) });
        Assert.Equal([1, 1, 1], pace.Dishes.Select(dish => dish.Kept));
        Assert.Equal([0.25, 0.5, 1 / 3.0], pace.Dishes.Select(dish => dish.KeepRate));
        Assert.Equal([4.0, 2.0, 3.0], pace.Dishes.Select(dish => dish.FramesPerKept));
        Assert.Equal(3 / 0.4, pace.KeptPerHour!.Value, 1e-9);
    }

    [Fact]
    public void Pace_WithNamesOfNoFrame_CountsThemAndSaysSo()
    {
        var options = new PaceOptions
        {
            Kept = new(["f0.jpg", "F8", "f99.jpg", "f1"]),
            Dishes = DishList.Read("file,dish\nf0.jpg,soup\nelsewhere/f1.jpg,soup\n"),
        };
        var pace = ShootPace.Of(Frames(Minutes), options);
        Assert.Equal((2, 1), (pace.KeptNamesUnmatched, pace.DishNamesUnmatched));
        Assert.Equal(["time-offset:missing", "kept-list:unmatched", "dish-list:unmatched"], pace.Notes.Codes());
        Assert.EndsWith(": 2, such as F8.", pace.Notes[1].Text, StringComparison.Ordinal);
        Assert.EndsWith(": 1, such as elsewhere/f1.jpg.", pace.Notes[2].Text, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(PaceText.Json(pace));
        Assert.Equal(2, json.RootElement.GetProperty("kept_names_unmatched").GetInt32());
        Assert.Equal(1, json.RootElement.GetProperty("dish_names_unmatched").GetInt32());

        pace = ShootPace.Of(Frames(Minutes), new() { Kept = new(["f0.jpg"]) });
        Assert.Equal((0, null), (pace.KeptNamesUnmatched, pace.DishNamesUnmatched));
    }

    [Fact]
    public void Pace_WithDishesByFile_GroupsByName()
    {
        var dishes = DishList.Read("file,dish\r\nf0.jpg,\"soup, hot\"\r\nf1,\"soup, hot\"\r\ninner/f6.jpg,bread\r\n");
        var pace = ShootPace.Of(Frames(Minutes), new() { Dishes = dishes });
        Assert.Equal(["soup, hot", "bread"], pace.Dishes.Select(dish => dish.Dish));
        Assert.Equal([2, 1], pace.Dishes.Select(dish => dish.Frames));
        Assert.Equal(6, pace.FramesOfNoDish);
    }

    [Fact]
    public void Pace_WithDishesByTime_GroupsByTime()
    {
        var dishes = DishList.Read("from,dish\n2026-11-25 14:00,bread\n2026-11-25 08:55:00,soup\n");
        var pace = ShootPace.Of(Frames(Minutes), new() { Dishes = dishes });
        Assert.Equal(["soup", "bread"], pace.Dishes.Select(dish => dish.Dish));
        Assert.Equal([6, 3], pace.Dishes.Select(dish => dish.Frames));
        Assert.Equal([20.0, 4.0], pace.Dishes.Select(dish => dish.Minutes));
    }

    [Theory]
    [InlineData("name,dish\na,b")]
    [InlineData("file,dish\na")]
    [InlineData("from,dish\nnoon,b")]
    [InlineData("file,dish\n\"a,b")]
    public void DishList_ThatIsNone_IsRefused(string csv) => Assert.Throws<FormatException>(() => DishList.Read(csv));

    [Fact]
    public void Pace_WithDifferentOffsets_OrdersByTheMoments()
    {
        PhotoFrame[] frames = [new("a.jpg", Morning, TimeSpan.FromHours(1)), new("b.jpg", Morning.AddHours(1).AddMinutes(1), TimeSpan.FromHours(2))];
        var pace = ShootPace.Of(frames, new());
        Assert.Equal(1, Assert.Single(pace.Dishes).Minutes, 1e-9);
        Assert.Equal("time-offset:conflict", Assert.Single(pace.Notes).Code);
    }

    [Fact]
    public void Pace_WithSomeOffsetsMissing_ComparesTheClocksAndSaysSo()
    {
        PhotoFrame[] frames = [new("a.jpg", Morning, TimeSpan.FromHours(1)), new("b.jpg", Morning.AddMinutes(1), null)];
        Assert.Equal("time-offset:conflict", Assert.Single(ShootPace.Of(frames, new()).Notes).Code);
        Assert.Empty(ShootPace.Of(frames.Take(1), new()).Notes);
    }

    [Fact]
    public void Pace_OfNothing_IsEmpty()
    {
        var pace = ShootPace.Of([], new());
        Assert.Empty(pace.Dishes);
        Assert.Null(pace.DishesPerHour);
        Assert.Null(pace.DishMinutes);
    }

    [Fact]
    public void Frames_OfOnePressInTwoFormats_CountOnce()
    {
        using var folder = new TestFolder();
        folder.Add("a.jpg", ExifFields.Usual().Jpeg());
        folder.Add("a.nef", ExifFields.Usual().Tiff());
        folder.Add("b.jpg", ExifFields.Usual().Text(ExifFields.TakenAt, "2026:11:25 10:17:00").Jpeg());
        folder.Add("b.tif", ExifFields.Usual().Text(ExifFields.TakenAt, "2026:11:26 10:17:00").Tiff());
        folder.Add("c.jpg", ExifFields.Bare());
        var left = new List<string>();
        var frames = PhotoFrame.Of(PhotoFolder.Files(folder.Path), (photo, note) => left.Add($"{photo.Name} {note.Code}")).ToList();
        Assert.Equal(["a.jpg", "b.jpg", "b.tif"], frames.Select(frame => frame.Name));
        Assert.Equal(["c.jpg capture-time:missing"], left);
    }

    [Fact]
    public void Frames_OfOnePressInTwoFormats_AreNamedByEither()
    {
        using var folder = new TestFolder();
        folder.Add("a.dng", ExifFields.Usual().Tiff());
        folder.Add("a.jpg", ExifFields.Usual().Jpeg());
        folder.Add("b.dng", ExifFields.Usual().Text(ExifFields.TakenAt, "2026:11:25 10:17:00").Tiff());
        var options = new PaceOptions { Kept = new(["a.jpg"]), Dishes = DishList.Read("file,dish\na.jpg,soup\nb.dng,bread\n") };
        var pace = ShootPace.Of(PhotoFrame.Of(PhotoFolder.Files(folder.Path), (_, _) => { }), options);
        Assert.Equal(["soup", "bread"], pace.Dishes.Select(dish => dish.Dish));
        Assert.Equal([1, 0], pace.Dishes.Select(dish => dish.Kept));
        Assert.Equal(1, pace.Kept);
    }

    [Fact]
    public void Records_OfThePace_HoldEveryDish()
    {
        var pace = ShootPace.Of(Frames(Minutes), new() { Kept = new(["f0"]) });
        Assert.Equal(pace.Dishes.Count + 1, PaceText.Csv(pace).Split("\r\n").Length - 1);
        Assert.Contains("dish 1,2026-11-25T09:00:00,2026-11-25T09:06:00,6,12,4,1,0.25,4\r\n", PaceText.Csv(pace), StringComparison.Ordinal);
        using var json = JsonDocument.Parse(PaceText.Json(pace));
        Assert.Equal(3, json.RootElement.GetProperty("dishes").GetArrayLength());
        Assert.Equal(5.6, json.RootElement.GetProperty("dish_minutes").GetProperty("p90").GetDouble(), 1e-9);
    }

    [Fact]
    public void Spread_OfNumbers_InterpolatesBetweenThem()
    {
        Assert.Equal(new Spread(11, 5, 1, 9), Spread.Of(Enumerable.Range(0, 11).Select(number => (double)number)));
        Assert.Equal(new Spread(1, 7, 7, 7), Spread.Of([7]));
        Assert.Null(Spread.Of([]));
    }

    private static List<PhotoFrame> Frames(IEnumerable<double> minutes) =>
        minutes.Select((at, number) => new PhotoFrame($"{(number > 5 ? "inner/" : "")}f{number}.jpg", Morning.AddMinutes(at), null)).ToList();
}

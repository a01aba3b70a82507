namespace StudioCalc.Maths.Tests;

public sealed class HoldingProfilesTests
{
    private const string Header =
        "id,component,ends_by,clock_start,model,window_pessimistic_s,window_likely_s,window_optimistic_s,"
        + "set_point_pessimistic_celsius,set_point_likely_celsius,set_point_optimistic_celsius,"
        + "half_life_pessimistic_s,half_life_likely_s,half_life_optimistic_s,share_left,is_wait,source_kind,source\n";

    private const string Window = "bread,bread,it dries,Cut,FixedWindow,60,90,120,,,,,,,,no,Practice,common practice\n";

    private const string SetPoint = "fat,fat,it sets,OffHeat,FilmOnPlate,,,,50,45,40,,,,,no,Published,\"a book, 2000\"\n";

    private const string Decay = "foam,foam,half is gone,Poured,FirstOrder,,,,,,,60,90,120,0.5,no,Computed,a paper\n";

    [Fact]
    public void All_BuiltIn_IsNotEmptyAndFoundById()
    {
        Assert.NotEmpty(HoldingProfiles.All);
        Assert.All(HoldingProfiles.All, profile => Assert.Same(profile, HoldingProfiles.Find(profile.Id)));
        Assert.Null(HoldingProfiles.Find("no-such-profile"));
    }

    [Fact]
    public void All_BuiltIn_PracticeAndMemoryNameThemselves()
    {
        Assert.All(
            HoldingProfiles.All.Where(profile => profile.SourceKind == SourceKind.Practice),
            profile => Assert.StartsWith("common practice", profile.Source, StringComparison.Ordinal));
        Assert.All(
            HoldingProfiles.All.Where(profile => profile.SourceKind == SourceKind.Memory),
            profile => Assert.Contains("from memory", profile.Source, StringComparison.Ordinal));
    }

    [Fact]
    public void All_BuiltIn_SharesLieWithinThoseOfTheContract()
    {
        Assert.All(
            HoldingProfiles.All.Where(profile => profile.Model == HoldingModel.FirstOrder),
            profile => Assert.InRange(profile.ShareLeft!.Value, 0.001, 0.999));
    }

    [Fact]
    public void Read_OneRowOfEachForm_KeepsEveryValue()
    {
        var read = HoldingProfiles.Read(Header + Window + SetPoint + Decay);

        Assert.Equal(
            [
                new("bread", "bread", "it dries", ClockStart.Cut, HoldingModel.FixedWindow, new(60, 90, 120), null, null, null,
                    SourceKind.Practice, "common practice", false),
                new("fat", "fat", "it sets", ClockStart.OffHeat, HoldingModel.FilmOnPlate, null, new(50, 45, 40), null, null,
                    SourceKind.Published, "a book, 2000", false),
                new("foam", "foam", "half is gone", ClockStart.Poured, HoldingModel.FirstOrder, null, null, new(60, 90, 120), 0.5,
                    SourceKind.Computed, "a paper", false),
            ],
            read);
    }

    [Theory]
    [InlineData("bread,bread", "Bread,bread", "small letters")]
    [InlineData("it dries", "", "ends_by")]
    [InlineData("it dries", " it dries", "spaces")]
    [InlineData("Cut", "Sliced", "clock_start")]
    [InlineData("Cut", "3", "clock_start")]
    [InlineData("FixedWindow", "FirstOrder", "window_likely_s")]
    [InlineData("FixedWindow", "FilmOnPlate", "window_likely_s")]
    [InlineData("60,90,120", ",,", "window_likely_s")]
    [InlineData("60,90,120", "60,,120", "all three")]
    [InlineData("60,90,120", "60,90,80", "must rise")]
    [InlineData("60,90,120", "100,90,120", "must rise")]
    [InlineData("60,90,120", "0,90,120", "above 0")]
    [InlineData("60,90,120", "60,ninety,120", "not a number")]
    [InlineData("60,90,120", "60,NaN,120", "not a number")]
    [InlineData(",no,", ",perhaps,", "is_wait")]
    [InlineData("Practice", "Computed", "no fixed window is computed")]
    [InlineData("common practice", "", "source")]
    [InlineData("common practice", "common practice,more", "19 values")]
    [InlineData("common practice", "\"common practice", "does not end")]
    [InlineData("common practice", "\"common\" practice", "follow a quote")]
    public void Read_BadRow_IsRefusedByItsColumn(string good, string bad, string message)
    {
        var row = Window.Replace(good, bad, StringComparison.Ordinal);
        Assert.NotEqual(Window, row);

        var error = Assert.Throws<InvalidDataException>(() => HoldingProfiles.Read(Header + row));

        Assert.StartsWith("Line 2", error.Message, StringComparison.Ordinal);
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("50,45,40", "40,45,50")]
    [InlineData("OffHeat", "OutOfCold")]
    [InlineData("50,45,40", ",,")]
    public void Read_SetPointAgainstItsDirection_IsRefused(string good, string bad) => Assert.Contains(
        "set_point_likely_celsius",
        Assert.Throws<InvalidDataException>(
            () => HoldingProfiles.Read(Header + SetPoint.Replace(good, bad, StringComparison.Ordinal))).Message,
        StringComparison.Ordinal);

    [Theory]
    [InlineData("0.5", "")]
    [InlineData("0.5", "1")]
    [InlineData("0.5", "0")]
    [InlineData("60,90,120", ",,")]
    [InlineData("60,90,120", "60,90,30")]
    public void Read_DecayWithoutShareOrHalfLife_IsRefused(string good, string bad) => Assert.Throws<InvalidDataException>(
        () => HoldingProfiles.Read(Header + Decay.Replace(good, bad, StringComparison.Ordinal)));

    [Fact]
    public void Read_DoubledOrUnorderedIds_AreRefused()
    {
        Assert.Throws<InvalidDataException>(() => HoldingProfiles.Read(Header + Window + Window));
        Assert.Throws<InvalidDataException>(() => HoldingProfiles.Read(Header + Decay + Window));
    }

    [Fact]
    public void Read_UnknownColumn_IsRefused() => Assert.Throws<InvalidDataException>(
        () => HoldingProfiles.Read(Header.Replace("ends_by", "ends", StringComparison.Ordinal) + Window));
}

using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class QuoteShootTests
{
    public static TheoryData<string, string, Action<QuoteShootRequest>> Bad => new()
    {
        { "load_in.time.shortest", "CONFLICT", request => request.LoadIn = Quotes.Minutes(10, shortest: 11) },
        { "try_time.time.longest", "CONFLICT", request => request.TryTime = Quotes.Minutes(10, longest: 9) },
        { "pause.time.longest", "CONFLICT", request => request.Pause = Quotes.Minutes(1, longest: 101, spread: StepSpread.LogNormal) },
        { "setup_share.value", "OUT_OF_RANGE", request => request.SetupShare = Quotes.Number(1.01) },
        { "keep_chance.value", "OUT_OF_RANGE", request => request.KeepChance = Quotes.Number(0.0009) },
        { "keep_chance.value", "OUT_OF_RANGE", request => request.KeepChance = Quotes.Number(1.01) },
        { "most_tries.value", "OUT_OF_RANGE", request => request.MostTries = Quotes.Number(2.5) },
        { "most_tries.value", "OUT_OF_RANGE", request => request.MostTries = Quotes.Number(0) },
        { "hours_between_breaks.value", "OUT_OF_RANGE", request => request.HoursBetweenBreaks = Quotes.Number(0.4) },
        { "draws", "OUT_OF_RANGE", request => (request.Dishes, request.Draws) = (51, 100_000) },
        { "dishes", "OUT_OF_RANGE", request => (request.Dishes, request.KeepChance, request.MostTries) = (51, Quotes.Number(0.001), Quotes.Number(1000)) },
        { "dishes", "OUT_OF_RANGE", request => (request.Dishes, request.PlateWait) = (200, Quotes.Minutes(720)) },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<QuoteShootRequest> spoil)
    {
        var request = Quotes.Certain();
        spoil(request);
        Assert.Equal([(field, reason)], Calls.Refused(() => Calls.ShootPlan.QuoteShoot(request)));
    }

    [Fact]
    public void DishesAlone_AreQuoted_AndEveryDefaultIsStatedAsAnAssumption()
    {
        var answer = Calls.ShootPlan.QuoteShoot(new() { Dishes = 9 });
        Assert.Equal((1u, 10000u, EstimateBasis.Assumption), (answer.Seed, answer.Draws, answer.Basis));
        var times = QuoteShootRequest.Descriptor.Fields.InDeclarationOrder()
            .Where(field => field.FieldType == Google.Protobuf.Reflection.FieldType.Message && field.MessageType.Name.StartsWith("Quoted", StringComparison.Ordinal))
            .Select(field => field.Name);
        Assert.Equal(times.Prepend("shots_per_dish"), answer.Defaults.Select(one => one.Name));
        Assert.All(answer.Defaults, one => Assert.Equal(EstimateBasis.Assumption, one.Basis));
        Assert.Equal("0.75 to 2.5 min, likely 1.25 min", answer.Defaults.Single(one => one.Name == "try_time").Text);
        Assert.False(answer.HasDishesThatFit);
        var (low, likely, high) = (Calls.Number(answer.Length.P10.Value), Calls.Number(answer.Length.P50.Value), Calls.Number(answer.Length.P90.Value));
        Assert.True(low < likely && likely < high);
        Assert.Equal(high - likely, Calls.Number(answer.Contingency), 1e-6);
        Assert.Equal(9 * 3600 / likely, answer.ShotsPerHour, 1e-9);
    }

    [Fact]
    public void ValueTold_IsNoDefault_AndRestsOnItsBasis()
    {
        var answer = Calls.ShootPlan.QuoteShoot(Examples.Quote());
        Assert.DoesNotContain(answer.Defaults, one => one.Name is "shots_per_dish" or "load_in" or "try_time" or "keep_chance");
        Assert.Equal(EstimateBasis.StudioHistory, Calls.ShootPlan.QuoteShoot(Quotes.Known(EstimateBasis.StudioHistory)).Basis);
        var measured = Calls.ShootPlan.QuoteShoot(Quotes.Known(EstimateBasis.Measured));
        Assert.Equal(EstimateBasis.Measured, measured.Basis);
        Assert.Equal(["shots_per_dish"], measured.Defaults.Select(one => one.Name));
    }

    [Fact]
    public void MeanByAddingMeans_IsThatOfTheDraws()
    {
        var request = new QuoteShootRequest { Dishes = 12, ShotsPerDish = 2, KeepChance = Quotes.Number(0.3), MostTries = Quotes.Number(2), HoursBetweenBreaks = Quotes.Number(1000) };
        var answer = Calls.ShootPlan.QuoteShoot(request);
        var spread = (Calls.Number(answer.Length.P90.Value) - Calls.Number(answer.Length.P10.Value)) / 2.56;
        Assert.Equal(Calls.Number(answer.MeanLength), Calls.Number(answer.Length.Mean), 4 * spread / Math.Sqrt(answer.Draws));
    }

    [Fact]
    public void Breaks_ComeAfterTheirHoursOfWork()
    {
        var request = Quotes.Certain();
        (request.Dishes, request.HoursBetweenBreaks) = (4, Quotes.Number(1));
        Assert.Equal(60 * (50 + 4 * 20 + 2 * 30), Calls.Number(Calls.ShootPlan.QuoteShoot(request).Length.P50.Value));
    }

    [Fact]
    public void DishesThatFit_AreTheMostWhoseP90Fits()
    {
        var request = Examples.Quote();
        var fit = Calls.ShootPlan.QuoteShoot(request).DishesThatFit;
        request.Dishes = fit;
        Assert.True(Calls.ShootPlan.QuoteShoot(request).Length.P90.Value.Seconds < request.Day.Seconds);
        request.Dishes = fit + 1;
        Assert.True(Calls.ShootPlan.QuoteShoot(request).Length.P90.Value.Seconds >= request.Day.Seconds);
    }

    [Fact]
    public void DrawsUnset_AreFewer_WhereManyTriesAreToBeDrawn()
    {
        var request = Quotes.Certain();
        request.ClearDraws();
        (request.Dishes, request.ShotsPerDish) = (200, 20);
        request.LoadIn = Quotes.Minutes(25);
        Assert.Equal(1250u, Calls.ShootPlan.QuoteShoot(request).Draws);
    }

    [Fact]
    public void NothingTakesTime_HasNoRate()
    {
        var request = Quotes.Certain();
        foreach (var field in QuoteShootRequest.Descriptor.Fields.InDeclarationOrder())
        {
            if (field.Accessor.GetValue(request) is QuotedTime)
            {
                field.Accessor.SetValue(request, Quotes.Minutes(0));
            }
        }

        var answer = Calls.ShootPlan.QuoteShoot(request);
        Assert.Equal((0, new Duration()), (answer.ShotsPerHour, answer.Length.P90.Value));
    }

    [Fact]
    public void Seed_GivesTheSameDraws_AnotherOneOthers()
    {
        var request = new QuoteShootRequest { Dishes = 5 };
        var first = Calls.ShootPlan.QuoteShoot(request);
        Assert.Equal(first, Calls.ShootPlan.QuoteShoot(request));
        request.Seed = 2;
        Assert.NotEqual(first.Length, Calls.ShootPlan.QuoteShoot(request).Length);
    }

    [Fact]
    public void Cancelled_InTheMiddle_StopsWithoutAnAnswer()
    {
        var source = Runs.CancelledSoon();
        var error = Assert.Throws<RpcException>(() => Calls.ShootPlan.QuoteShoot(
            new() { Dishes = 200, ShotsPerDish = 10, Draws = 1200 }, cancellationToken: source.Token));
        Assert.Equal(StatusCode.Cancelled, error.StatusCode);
    }
}

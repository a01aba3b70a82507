using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class ListHoldingProfilesTests
{
    private static readonly ListHoldingProfilesResponse Answer = Calls.Freshness.ListHoldingProfiles(new());

    [Fact]
    public void List_HasEveryRowWithAllThatItHolds()
    {
        Assert.Equal(HoldingProfiles.All.Select(row => row.Id), Answer.Profiles.Select(row => row.Id));
        Assert.Equal(HoldingProfiles.Version, Answer.CatalogueVersion);
        foreach (var (row, told) in HoldingProfiles.All.Zip(Answer.Profiles))
        {
            Assert.Equal((row.Component, row.EndsBy, row.Source, row.IsWait), (told.Component, told.EndsBy, told.Source, told.IsWait));
            Assert.Equal((row.ClockStart.ToString(), row.Model.ToString()), (told.ClockStart.ToString(), told.Model.ToString()));
            Assert.Equal(row.SourceKind.ToString(), told.SourceKind.ToString());
            Assert.Equal(row.Window, Span(told.Window));
            Assert.Equal(row.HalfLife, Span(told.HalfLife));
            Assert.Equal(row.ShareLeft, told.HasShareLeft ? told.ShareLeft : null);
            Assert.Equal(
                row.SetPoint,
                told.SetPoint is { } band
                    ? new Maths.TemperatureBand(band.PessimisticCelsius, band.LikelyCelsius, band.OptimisticCelsius)
                    : null);
        }
    }

    [Fact]
    public void List_IsTheVersionThatCapabilitiesTell()
    {
        var capabilities = new CapabilitiesService.CapabilitiesServiceClient(new InProcessCallInvoker()).GetCapabilities(new());
        Assert.Equal(Answer.CatalogueVersion, capabilities.Catalogues.Single(catalogue => catalogue.Name == "holding profiles").Version);
    }

    [Fact]
    public void List_EveryWindowAndDecay_CanBeNamedInAnEstimate()
    {
        foreach (var row in Answer.Profiles.Where(row => row.SetPoint is null))
        {
            var item = row.Window is null
                ? new FoodItem { Decay = new() { ProfileId = row.Id } }
                : new FoodItem { ProfileId = row.Id };
            var window = Calls.Freshness.EstimateHoldingTime(new() { Item = item }).Window;
            Assert.True(window.Span.Likely.ToSeconds() > 0, row.Id);
            Assert.True(row.SourceKind <= V1.SourceKind.Computed || window.SourceKind >= row.SourceKind, row.Id);
        }
    }

    private static Maths.HoldingSpan? Span(V1.HoldingSpan? span) =>
        span is null ? null : new(span.Pessimistic.ToSeconds(), span.Likely.ToSeconds(), span.Optimistic.ToSeconds());
}

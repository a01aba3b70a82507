using StudioCalc.V1;

namespace StudioCalc.Services.Tests;

public sealed class EstimateHoldingTimeTests
{
    public static TheoryData<string, string, Action<EstimateHoldingTimeRequest>> Bad => new()
    {
        { "air", "REQUIRED", request => request.Air = null },
        { "item", "OUT_OF_RANGE", request => Only(request, Thin(), new() { SurfaceCelsius = 30 }) },
        { "item.leaves.food", "OUT_OF_RANGE", request => Only(request, new() { Leaves = new() { Food = new() { Film = Thin().Film } } }) },
        { "ends_at", "REQUIRED", request => request.EndsAt = null },
        { "ends_at", "CONFLICT", request => request.Item = new() { ProfileId = "souffle" } },
        { "item.profile_id", "UNKNOWN_MARK", request => Only(request, new() { ProfileId = "guess" }) },
        { "item.profile_id", "CONFLICT", request => Only(request, new() { ProfileId = "beef-fat" }) },
        { "item.profile_id", "CONFLICT", request => Only(request, new() { ProfileId = "beer-foam" }) },
        { "item.decay.profile_id", "CONFLICT", request => Only(request, new() { Decay = new() { ProfileId = "souffle" } }) },
        { "item.decay.profile_id", "UNKNOWN_MARK", request => Only(request, new() { Decay = new() { ProfileId = "guess" } }) },
        { "ends_at.profile_id", "CONFLICT", request => request.EndsAt.ProfileId = "souffle" },
        { "ends_at.spread_k", "CONFLICT", request => request.EndsAt.SpreadK = 1 },
        { "ends_at.surface_celsius", "OUT_OF_RANGE", request => request.EndsAt.SurfaceCelsius = 63 },
        { "ends_at.surface_celsius", "OUT_OF_RANGE", request => request.EndsAt.SurfaceCelsius = 2 },
        { "ends_at.profile_id", "OUT_OF_RANGE", request => request.EndsAt.ProfileId = "cheese-pull-hard" },
        { "item.own_window.pessimistic", "CONFLICT", request => Only(request, new() { OwnWindow = Own(likely: 60, pessimistic: 61) }) },
        { "item.own_window.optimistic", "CONFLICT", request => Only(request, new() { OwnWindow = Own(likely: 60, optimistic: 59) }) },
        { "item.piece.properties.composition", "CONFLICT", request => request.Item.Piece.Properties.Composition.WaterShare = 0.3 },
        { "item.piece.properties.composition.fibre_share", "CONFLICT", request => request.Item.Piece.Properties.Composition.FibreShare = 0.01 },
        { "item.piece.start_celsius", "OUT_OF_RANGE", request => request.Item.Piece.StartCelsius = -1 },
        { "item.piece.start_celsius", "CONFLICT", request => request.Item.Piece.StartCelsius = 101 },
        { "item.piece.wetness", "CONFLICT", request => Ball(request).Wetness = 0.5 },
        { "item.piece.plate", "CONFLICT", request => Ball(request).Plate = new() { MassG = 500, StartCelsius = 20 } },
        { "item.piece.lower_face_insulated", "CONFLICT", request => Ball(request).LowerFaceInsulated = true },
        { "item.piece.contact_diameter_mm", "CONFLICT", request => Ball(request).ContactDiameterMm = 50 },
        { "item.piece.lower_face_insulated", "CONFLICT", request => request.Item.Piece.LowerFaceInsulated = true },
        { "item.piece.contact_diameter_mm", "CONFLICT", request => request.Item.Piece.ContactDiameterMm = 281 },
        { "item.ice_cream.start_celsius", "CONFLICT", request => Only(request, new() { IceCream = new() { DiameterMm = 50, StartCelsius = -2 } }) },
        { "item.ice_cream.gloss_lost_celsius", "CONFLICT", request =>
            Only(request, new() { IceCream = new() { DiameterMm = 50, StartCelsius = -14, GlossLostCelsius = -2 } }) },
        { "item.glass.beads_um", "CONFLICT", request => Only(request, new() { Glass = new() { SurfaceCelsius = 5, HazeUm = 2, BeadsUm = 1 } }) },
        { "air.total_w_per_m2_k", "CONFLICT", request => request.Air.TotalWPerM2K = 12 },
        { "air.walls_celsius", "CONFLICT", request =>
        {
            request.Item.Piece.Wetness = 0;
            (request.Air.TotalWPerM2K, request.Air.WallsCelsius) = (12, 20);
        } },
        { "air.convection_w_per_m2_k", "CONFLICT", request => (request.Air.ConvectionWPerM2K, request.Air.SpeedMPerS) = (8, 0.2) },
        { "air.total_w_per_m2_k", "CONFLICT", request =>
        {
            request.Item.Piece.Wetness = 0;
            (request.Air.TotalWPerM2K, request.Air.SpeedMPerS) = (12, 0.2);
        } },
        { "air.temperature_celsius", "OUT_OF_RANGE", request => request.Air.TemperatureCelsius = 61 },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void BadField_IsNamed(string field, string reason, Action<EstimateHoldingTimeRequest> spoil)
    {
        var request = Examples.Holding();
        spoil(request);
        Assert.Contains((field, reason), Calls.Refused(() => Calls.Freshness.EstimateHoldingTime(request)));
    }

    [Fact]
    public void OwnWindow_GoesAsItIs()
    {
        var request = new EstimateHoldingTimeRequest { Item = new() { OwnWindow = Own(likely: 90, pessimistic: 60, optimistic: 200) } };
        var span = Calls.Freshness.EstimateHoldingTime(request).Window.Span;
        Assert.Equal((60, 90, 200), (span.Pessimistic.Seconds, span.Likely.Seconds, span.Optimistic.Seconds));
    }

    [Fact]
    public void ColdFood_Warms_AndPassesItsSetPointFromBelow()
    {
        var request = Examples.Holding();
        request.Item.Piece.Plate = null;
        request.Item.Piece.StartCelsius = 4;
        request.EndsAt = new() { SurfaceCelsius = 15, SpreadK = 2 };
        var span = Calls.Freshness.EstimateHoldingTime(request).Window.Span;
        Assert.True(span.Pessimistic.ToSeconds() < span.Likely.ToSeconds() && span.Likely.ToSeconds() < span.Optimistic.ToSeconds());
    }

    [Fact]
    public void SetPointThatIsHardlyReached_HoldsForMoreThanADay()
    {
        var request = Examples.Holding();
        request.Item = new() { Liquid = new() { MassG = 20000, SurfaceDiameterMm = 150, StartCelsius = 80, Wetness = 0, WallWPerM2K = 0 } };
        request.EndsAt = new() { SurfaceCelsius = 25 };
        var holdsOn = Calls.Freshness.EstimateHoldingTime(request).HoldsOn;
        Assert.Equal(HoldsOnReason.MoreThanADay, holdsOn.Reason);
        Assert.Equal(22, holdsOn.SettlesAtCelsius, 0.01);
    }

    [Fact]
    public void PracticeCapsTheLawOfLeaves()
    {
        var request = new EstimateHoldingTimeRequest { Item = new() { Leaves = new() { SurfaceCelsius = 50 } } };
        var capped = Calls.Freshness.EstimateHoldingTime(request).Window;
        Assert.Equal((150, SourceKind.Practice), (capped.Span.Likely.Seconds, capped.SourceKind));
        request.Item.Leaves.SurfaceCelsius = 57;
        Assert.Equal(SourceKind.Computed, Calls.Freshness.EstimateHoldingTime(request).Window.SourceKind);
        request.Item.Leaves.SurfaceCelsius = 40;
        Assert.Equal(HoldsOnReason.TooCoolToHarm, Calls.Freshness.EstimateHoldingTime(request).HoldsOn.Reason);
    }

    [Fact]
    public void OwnWindow_IsToldAsGiven_AndAComputedTimeAsComputed()
    {
        var request = new EstimateHoldingTimeRequest { Item = new() { OwnWindow = Own(likely: 90) } };
        Assert.Equal(SourceKind.Given, Calls.Freshness.EstimateHoldingTime(request).Window.SourceKind);
        request = Examples.Holding();
        request.EndsAt = new() { SurfaceCelsius = 55 };
        Assert.Equal(SourceKind.Computed, Calls.Freshness.EstimateHoldingTime(request).Window.SourceKind);
    }

    // A leaf of copper a tenth of a millimetre thick: without thicker layers a day of it would take a day.
    [Fact]
    public void ThinMetal_IsFollowedInFewSteps()
    {
        var request = Examples.Holding();
        var piece = request.Item.Piece;
        (piece.SizeMm, piece.Wetness, piece.Plate) = (0.1, 0, null);
        piece.Properties = new() { Given = new() { ConductivityWPerMK = 400, DensityKgPerM3 = 8900, SpecificHeatJPerKgK = 385 } };
        request.EndsAt = new() { SurfaceCelsius = 30 };

        // By one lump: 171 J/(m² K) a face, some 11 W/(m² K), so that 40 K become 8 in about 171 / 11 * ln 5 s.
        Assert.InRange(Calls.Freshness.EstimateHoldingTime(request).Window.Span.Likely.ToSeconds(), 15, 40);
    }

    [Fact]
    public void FoodThatWarmsOnItsPlate_AndTurnsBefore_SettlesBeforeItsSetPoint()
    {
        var request = Examples.Holding();
        (request.Item.Piece.StartCelsius, request.Item.Piece.Plate.StartCelsius) = (40, 90);
        request.EndsAt = new() { SurfaceCelsius = 80 };
        var holdsOn = Calls.Freshness.EstimateHoldingTime(request).HoldsOn;
        Assert.Equal(HoldsOnReason.SettlesBefore, holdsOn.Reason);
    }

    [Fact]
    public async Task Cancelled_WhileFoodIsFollowed_Stops()
    {
        var request = Examples.Holding();
        request.Item = new() { Liquid = new() { MassG = 20000, SurfaceDiameterMm = 60, StartCelsius = 80, Wetness = 0, WallWPerM2K = 0 } };
        request.EndsAt = new() { SurfaceCelsius = 23 };
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        var error = await Assert.ThrowsAsync<Grpc.Core.RpcException>(
            async () => await Calls.Freshness.EstimateHoldingTimeAsync(request, cancellationToken: stop.Token));
        Assert.Equal(Grpc.Core.StatusCode.Cancelled, error.StatusCode);
    }

    private static void Only(EstimateHoldingTimeRequest request, FoodItem item, SetPoint? endsAt = null) =>
        (request.Item, request.EndsAt) = (item, endsAt);

    private static FoodItem Thin() => new()
    {
        Film = new()
        {
            ThicknessMm = 0.05,
            DiameterMm = 100,
            StartCelsius = 70,
            Properties = new() { Given = new() { ConductivityWPerMK = 0.2, DensityKgPerM3 = 900, SpecificHeatJPerKgK = 2000 } },
            Plate = new() { MassG = 800, StartCelsius = 20, ContactWPerM2K = 10000 },
        },
    };

    private static SolidPiece Ball(EstimateHoldingTimeRequest request)
    {
        var piece = request.Item.Piece;
        (piece.Shape, piece.Wetness, piece.Plate) = (PieceShape.Ball, 0, null);
        piece.ClearContactDiameterMm();
        return piece;
    }

    private static OwnWindow Own(int likely, int? pessimistic = null, int? optimistic = null) => new()
    {
        Likely = new() { Seconds = likely },
        Pessimistic = pessimistic is { } low ? new() { Seconds = low } : null,
        Optimistic = optimistic is { } high ? new() { Seconds = high } : null,
    };
}

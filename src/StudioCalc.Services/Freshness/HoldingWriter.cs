using StudioCalc.Maths;
using StudioCalc.V1;

namespace StudioCalc.Services;

/// <summary>How long a component holds, or why its look does not end.</summary>
internal sealed record Holding(V1.HoldingWindow? Window, HoldsOn? HoldsOn, IReadOnlyList<CoolingEvent> Events)
{
    public static Holding Of(Maths.HoldingModel model, Span span, Maths.SourceKind kind, string source, params IReadOnlyList<CoolingEvent> events) => new(
        new()
        {
            Span = span.ToContract(),
            Model = model.ToContract(),
            SourceKind = kind.ToContract(),
            Source = source,
        },
        null,
        events);

    public static Holding On(HoldsOnReason reason, double? settlesAt = null)
    {
        var holdsOn = new HoldsOn { Reason = reason };
        if (settlesAt is { } celsius)
        {
            holdsOn.SettlesAtCelsius = celsius;
        }

        return new(null, holdsOn, []);
    }
}

/// <summary>A span of which the hopeful end may not come.</summary>
internal readonly record struct Span(double PessimisticS, double LikelyS, double? OptimisticS)
{
    public V1.HoldingSpan ToContract() => new()
    {
        Pessimistic = PessimisticS.ToDuration(),
        Likely = LikelyS.ToDuration(),
        Optimistic = OptimisticS?.ToDuration(),
    };
}

/// <summary>Computes and writes how long components hold.</summary>
internal static class HoldingWriter
{
    public static Holding Compute<TTrail>(HoldingRead read, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail => read switch
    {
        CoolingRead cooling => Cool(cooling, cancellation, ref trail),
        ScoopRead scoop => Melt(scoop, cancellation, ref trail),
        GlassRead glass => Fog(glass, ref trail),
        DecayRead decay => Decay(decay, ref trail),
        LeavesRead leaves => Wilt(leaves, cancellation, ref trail),
        WindowRead window => Take(window, ref trail),
        _ => throw new ArgumentOutOfRangeException(nameof(read)),
    };

    /// <summary>The model that follows a body.</summary>
    public static Maths.HoldingModel ModelOf(FoodBody body, Room room) => body switch
    {
        LiquidBody { Plate: null } => Maths.HoldingModel.WellMixedLiquid,
        LiquidBody => Maths.HoldingModel.FoodAndPlate,
        FilmBody => Maths.HoldingModel.FilmOnPlate,
        ScoopBody => Maths.HoldingModel.IceCream,
        PieceBody { Plate: null } when room.Movement == AirMovement.Total => Maths.HoldingModel.SolidSeries,
        _ => Maths.HoldingModel.SolidNumeric,
    };

    public static CoolingEvent Event(CoolingEventKind kind, double seconds, double? celsius)
    {
        var found = new CoolingEvent { Kind = kind, At = seconds.ToDuration() };
        if (celsius is { } known)
        {
            found.SurfaceCelsius = known;
        }

        return found;
    }

    private static Holding Cool<TTrail>(CoolingRead read, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var (body, room, band) = (read.Food.Body, read.Room, read.EndsAt.Band);
        var isFalling = body.StartCelsius >= band.LikelyCelsius;
        var passed = HoldingTime.Until(
            FoodCourse.Of(body, room, cancellation),
            [new(band.LikelyCelsius, isFalling), new(band.PessimisticCelsius, isFalling), new(band.OptimisticCelsius, isFalling)]);
        trail.Section("holding time");
        trail.Given("Ts", band.LikelyCelsius, "°C", read.EndsAt.Source);
        if (passed[0] is not { } seconds)
        {
            return NotPassed(body, room, band.LikelyCelsius, isFalling, ref trail);
        }

        trail.Given("t", seconds, "s", "solved: the surface passes Ts", "window.span.likely");
        return Holding.Of(
            ModelOf(body, room),
            new(passed[1] ?? seconds, seconds, passed[2]),
            Weakest(Maths.SourceKind.Computed, read.EndsAt.Kind),
            read.EndsAt.Source,
            Event(CoolingEventKind.SetPoint, seconds, band.LikelyCelsius));
    }

    private static Holding NotPassed<TTrail>(FoodBody body, Room room, double celsius, bool isFalling, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var settles = trail.Given("Te", FoodCourse.SettlesCelsius(body, room), "°C", "where it settles", "holds_on.settles_at_celsius");
        return Holding.On(isFalling == (settles < celsius) ? HoldsOnReason.MoreThanADay : HoldsOnReason.SettlesBefore, settles);
    }

    private static Holding Melt<TTrail>(ScoopRead read, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        var body = (ScoopBody)read.Food.Body;
        var passed = HoldingTime.Until(
            FoodCourse.Of(body, read.Room, cancellation),
            [new(read.GlossLostCelsius, IsFalling: false), new(body.Mix.FreezingCelsius, IsFalling: false)]);
        var (gloss, melting) = (passed[0], passed[1]);
        trail.Section("holding time");
        trail.Given("Tg", read.GlossLostCelsius, "°C", read.IsGlossTold ? "gloss_lost_celsius" : "from memory");
        trail.Given("Tf", body.Mix.FreezingCelsius, "°C", "freezing point of the mix");
        if (gloss is not { } seconds)
        {
            return NotPassed(body, read.Room, read.GlossLostCelsius, isFalling: false, ref trail);
        }

        trail.Given("t", seconds, "s", "solved: the surface passes Tg", "window.span.likely");
        return Holding.Of(
            Maths.HoldingModel.IceCream,
            new(seconds, seconds, melting),
            read.IsGlossTold ? Maths.SourceKind.Computed : Maths.SourceKind.Memory,
            read.IsGlossTold
                ? "gloss and ridges are lost at the temperature as given; at the latest when the surface melts"
                : "gloss and ridges are lost at -4 °C of the surface, from memory; at the latest when the surface melts",
            [
                Event(CoolingEventKind.GlossLost, seconds, read.GlossLostCelsius),
                .. melting is { } drips ? [Event(CoolingEventKind.Melting, drips, body.Mix.FreezingCelsius)] : Array.Empty<CoolingEvent>(),
            ]);
    }

    private static Holding Fog<TTrail>(GlassRead read, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("holding time");
        if (Condensation.FilmUmPerS(read.Room, read.SurfaceCelsius) is not { } rate)
        {
            return Holding.On(HoldsOnReason.NoDew, trail.Given(
                "td", read.Room.Air.DewPointCelsius, "°C", "freshness (2)", "holds_on.settles_at_celsius"));
        }

        var r = trail.Given("r", rate, "µm/s", "freshness (35)");
        var f = trail.Given("f", read.HazeUm, "µm", "film at which a haze shows");
        var seconds = trail.Let("t", f / r, "s", "film over its growth", "window.span.likely");
        return Holding.Of(
            Maths.HoldingModel.Condensation,
            new(seconds / 2, seconds, read.BeadsUm / rate),
            read.AreFilmsTold ? Maths.SourceKind.Computed : Maths.SourceKind.Memory,
            read.AreFilmsTold
                ? "the glass is clear until the haze that was told; twice as fast if it shows at half that film"
                : "the glass is clear until a haze of 1 µm, from memory; twice as fast if it shows at half that film",
            Event(CoolingEventKind.Haze, seconds, read.SurfaceCelsius),
            Event(CoolingEventKind.Beads, read.BeadsUm / rate, read.SurfaceCelsius));
    }

    private static Holding Decay<TTrail>(DecayRead read, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("holding time");
        var none = default(NoTrail);
        var likely = FirstOrder.TimeS(read.HalfLife.LikelyS, read.ShareLeft, ref trail, "window.span.likely");
        return Holding.Of(
            Maths.HoldingModel.FirstOrder,
            new(
                FirstOrder.TimeS(read.HalfLife.PessimisticS, read.ShareLeft, ref none),
                likely,
                FirstOrder.TimeS(read.HalfLife.OptimisticS, read.ShareLeft, ref none)),
            Weakest(Maths.SourceKind.Computed, read.Kind),
            read.Source);
    }

    private static Holding Wilt<TTrail>(LeavesRead read, CancellationToken cancellation, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        // Half a kelvin either way: no better are the law and the temperature under a leaf known.
        const double spread = 0.5;
        var practice = read.Practice.Window!.Value;
        var (pessimistic, likely, optimistic) = (Until(spread), Until(0), Until(-spread));
        trail.Section("holding time");
        if (likely is null && StartOf(read) < LeafDamage.LeastCelsius)
        {
            return Holding.On(HoldsOnReason.TooCoolToHarm, trail.Given(
                "T", StartOf(read), "°C", "temperature under the leaves at the start", "holds_on.settles_at_celsius"));
        }

        var seconds = Math.Min(likely ?? practice.LikelyS, practice.LikelyS);
        trail.Given("c", practice.LikelyS, "s", "common practice, which caps it");
        trail.Given("t", seconds, "s", "solved: freshness (34), or the cap", "window.span.likely");
        var isCapped = likely is null || likely > practice.LikelyS;
        return Holding.Of(
            Maths.HoldingModel.LeafDamage,
            new(
                Math.Min(pessimistic ?? practice.PessimisticS, practice.PessimisticS),
                seconds,
                Math.Min(optimistic ?? practice.OptimisticS, practice.OptimisticS)),
            isCapped ? Maths.SourceKind.Practice : Maths.SourceKind.Computed,
            isCapped ? $"capped by {read.Practice.Id}: {read.Practice.Source}" : "heat damage of leaves, measured on pepper leaves from 46 to 53 °C",
            Event(CoolingEventKind.LeavesHarmed, seconds, null));

        double? Until(double warmer) => read.SurfaceCelsius is { } celsius
            ? celsius + warmer < LeafDamage.LeastCelsius ? null : LeafDamage.TimeS(celsius + warmer)
            : LeafDamage.Until(FoodCourse.Of(read.Food!.Body, read.Room!, cancellation), warmer);
    }

    private static Holding Take<TTrail>(WindowRead read, ref TTrail trail)
        where TTrail : struct, ITrail
    {
        trail.Section("holding time");
        var seconds = trail.Given("t", read.Span.LikelyS, "s", read.Source, "window.span.likely");
        return Holding.Of(Maths.HoldingModel.FixedWindow, new(read.Span.PessimisticS, seconds, read.Span.OptimisticS), read.Kind, read.Source);
    }

    private static double StartOf(LeavesRead read) => read.SurfaceCelsius ?? FoodCourse.Of(read.Food!.Body, read.Room!).At(0).Surface;

    private static Maths.SourceKind Weakest(Maths.SourceKind one, Maths.SourceKind other) => one > other ? one : other;
}
